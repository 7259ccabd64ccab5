// The least that an Ink program can be: one line in the alternate screen, bundled as ours is.
import { Box, render, Text, useInput } from 'ink';

process.stdin.setRawMode(true);
process.stdout.write('\r');

function Bare() {
  useInput(() => {});
  return (
    <Box height={23}>
      <Text>ready</Text>
    </Box>
  );
}

render(<Bare />, {
  alternateScreen: true,
  incrementalRendering: true,
  interactive: true,
  patchConsole: false,
});
