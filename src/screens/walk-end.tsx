import { Box } from 'ink';
import { revealedWords } from '../core/account/clauses/practice.ts';
import { sentence } from '../core/account/words/wording.ts';
import { leftComplaints } from '../core/session/complaints.ts';
import { apartNow } from '../core/session/apart/apart.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { triageOf } from '../core/session/triage.ts';
import { count } from '../core/text.ts';
import type { Library } from '../core/tree/shop.ts';
import { Line } from './parts.tsx';

type EndProps = { readonly story: Story; readonly library: Library | undefined };

/** Where no check and no cause stands on screen: proven, at an end, on to another tree, closed. */
export function EndBody({ story, library }: EndProps) {
  const { title, lines } = ending(story, library);
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

function ending(
  story: Story,
  library: EndProps['library'],
): { title: string; lines: readonly string[] } {
  const { due } = story;
  const apart = apartNow(story).length;
  const toPutBack =
    apart === 0 ? [] : [`Still open or off: ${count(apart, 'thing')} (a shows them).`];
  const others = leftComplaints(story).map(
    ({ title }) => `Not proven gone: ${title} (C goes back to it).`,
  );
  if (due.kind === 'proven')
    return {
      title: "PROVEN: the complaint's own test shows good after the repair.",
      lines: [
        ...hiddenLines(story),
        ...toPutBack,
        ...others,
        'Put everything back, then c to close. C: another complaint. e writes the account.',
      ],
    };
  if (due.kind === 'closed')
    return {
      title: `CLOSED: ${story.closed?.as.replace('-', ' ') ?? ''}`,
      lines: [
        ...hiddenLines(story),
        'e writes the account. n and d still add notes and things to do. c opens it again; C: another complaint on this job. q goes Home.',
      ],
    };
  if (due.kind === 'leg')
    return {
      title: 'ON TO ANOTHER COMPLAINT',
      lines: [`${titleOf(due.tree, library)}.`, due.reason, 'y: go on there.'],
    };
  if (due.kind === 'own') return due.test ? testFirst(story) : whatNext(toPutBack);
  return treeEnds(story, toPutBack);
}

/** A complaint by its title; by its name where the library does not have it. */
const titleOf = (tree: string, library: EndProps['library']): string =>
  library?.trees.find(({ id }) => id === tree)?.title ?? tree;

/** What a practice had hidden, once it was told. */
const hiddenLines = (story: Story): readonly string[] =>
  story.revealed === undefined ? [] : [sentence(revealedWords(story, story.revealed))];

function treeEnds(story: Story, toPutBack: readonly string[]) {
  const { due } = story;
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

/** Before anything else it is said how the complaint is made to happen: the same test proves the repair. */
const testFirst = (story: Story) => ({
  title: 'FIRST: how is it made to happen?',
  lines: [
    `The complaint: ${currentLeg(story).tree.complaint.say}`,
    'N: say what you try, what it shows while it is bad, and what when it is good. The same test proves the repair.',
    'What shows only now and then is tried until it shows. n: note. c: close.',
  ],
});

const whatNext = (toPutBack: readonly string[]) => ({
  title: 'WHAT NEXT? This job has no tree: you name what comes.',
  lines: [
    'N: a check of your own, or one of the library. o: make one of this job again.',
    'R: what you found wrong. r: a cause that is named already.',
    ...toPutBack,
    'n: note. p: part off. b: take back the last thing written. c: close.',
  ],
});
