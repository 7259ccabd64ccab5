import { Box } from 'ink';
import { openThings, type Story } from '../core/session/story.ts';
import { triageOf } from '../core/session/triage.ts';
import { count } from '../core/text.ts';
import { Line } from './parts.tsx';

/** Where no check and no cause stands on screen: proven, at an end, on to another tree, closed. */
export function EndBody({ story }: { story: Story }) {
  const { title, lines } = ending(story);
  const defer =
    "The vehicle's own manual, local rules and licensed practice come before anything said here.";
  return (
    <Box paddingX={1} flexDirection="column">
      <Line as="title">{title}</Line>
      {[...lines, defer].map((line) => (
        <Line key={line} wrap="fold">
          {line}
        </Line>
      ))}
    </Box>
  );
}

function ending(story: Story): { title: string; lines: readonly string[] } {
  const { due } = story;
  const apart = openThings(story).length;
  const toPutBack =
    apart === 0 ? [] : [`Still open or off: ${count(apart, 'thing')} (a shows them).`];
  if (due.kind === 'proven')
    return {
      title: "PROVEN: the complaint's own test shows good after the repair.",
      lines: [...toPutBack, 'Put everything back, then c to close. e writes the account.'],
    };
  if (due.kind === 'closed')
    return {
      title: `CLOSED: ${story.closed?.as.replace('-', ' ') ?? ''}`,
      lines: [
        'e writes the account. n and d still add notes and things to do. c opens it again. q goes Home.',
      ],
    };
  if (due.kind === 'leg')
    return {
      title: `ON TO ANOTHER COMPLAINT: ${due.tree}`,
      lines: [due.reason, 'y: go on there.'],
    };
  const reason = due.kind === 'stop' || due.kind === 'exhausted' ? due.reason : '';
  return {
    title: due.kind === 'exhausted' ? "THE TREE'S OWN WAY ENDS HERE" : 'THE TREE ENDS HERE',
    lines: [
      reason,
      ...toPutBack,
      `o: another check. r: ${triageOf(story) === undefined ? 'repair' : 'name'} a suspect. b: take back the last thing written. c: close.`,
    ],
  };
}
