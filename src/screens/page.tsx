import { Box } from 'ink';
import { Head, Line } from './parts.tsx';

/** A page to read, from one of its lines on. */
export function PageBody({
  lines,
  from,
}: {
  readonly lines: readonly string[];
  readonly from: number;
}) {
  const start = Math.min(from, Math.max(0, lines.length - 1));
  return (
    <Head>
      {lines.slice(start).map((line) => (
        <Box key={line} flexShrink={0}>
          <Line wrap="fold">{line}</Line>
        </Box>
      ))}
    </Head>
  );
}
