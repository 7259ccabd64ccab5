import { Box } from 'ink';
import type { Row } from './rows.ts';
import { Line } from './parts.tsx';

/** A page that asks for a claim: rows that were folded already, none of them cut. */
export function ClaimBody({ page }: { readonly page: readonly Row[] }) {
  return (
    <Box flexDirection="column" paddingLeft={1}>
      {page.map(({ mark, text, as }, index) => (
        // oxlint-disable-next-line react/no-array-index-key -- rows have nothing else of their own, and never move
        <Box key={index} flexShrink={0}>
          {mark === '' ? null : (
            <Box flexShrink={0} width={mark.length + 1}>
              <Line as={as}>{mark}</Line>
            </Box>
          )}
          <Line as={as}>{text}</Line>
        </Box>
      ))}
    </Box>
  );
}
