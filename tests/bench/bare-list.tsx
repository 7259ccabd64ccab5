// The least that a list in Ink can be: lines, and a mark that the arrow keys move.
import { Box, render, Text, useInput } from 'ink';
import { useState } from 'react';

const lines = Array.from({ length: 12 }, (_, index) => `line ${index + 1}`);

function List() {
  const [at, setAt] = useState(0);
  useInput((_, key) => {
    if (key.downArrow) setAt((now) => (now + 1) % lines.length);
    if (key.upArrow) setAt((now) => (now + lines.length - 1) % lines.length);
  });
  return (
    <Box height={23} flexDirection="column">
      {lines.map((line, index) => (
        <Text key={line}>{`${index === at ? '>' : ' '} ${line}`}</Text>
      ))}
    </Box>
  );
}

render(<List />, {
  alternateScreen: true,
  incrementalRendering: true,
  interactive: true,
  patchConsole: false,
  maxFps: 60,
});
