import { Box } from 'ink';
import type { Blocker, DueOnScreen, NamedCause } from '../app/walk/question.ts';
import { triageOf } from '../core/session/triage.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { count } from '../core/text.ts';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import { CautionPage, Cautions } from './cautions.tsx';
import { Asks, Ends, Head, Indented, Line } from './parts.tsx';
import { roomFor, rowsOf } from './room.ts';
import { setUpWords } from '../app/wording.ts';

type CauseProps = {
  readonly due: DueOnScreen;
  readonly named: NamedCause;
  readonly seen: number;
  readonly rows: number;
  readonly columns: number;
};

/** A cause that the tree names, or one condemned with its repair to be done. */
export function CauseBody(props: CauseProps) {
  const { named, seen } = props;
  const { story, blocker } = props.due;
  const { cause } = named;
  const leg = currentLeg(story);
  const repairing = story.due.kind === 'repair';
  return (
    <>
      <Head>
        <Ends
          left={`${repairing ? 'REPAIR: ' : 'IS IT THIS? '}${cause.name}`}
          right={
            leg.tree.triage === undefined ? `repair · ${cause.repair.minutes} min` : 'to inspection'
          }
          as="title"
        />
      </Head>
      {blocker.kind === 'caution' ? (
        <CautionPage cautions={blocker.cautions} leg={leg} seen={seen} />
      ) : (
        <CauseWords {...props} />
      )}
    </>
  );
}

function CauseWords({ due, named: { cause }, rows, columns }: CauseProps) {
  const { story, blocker } = due;
  const { where = '', shows, repair } = cause;
  const leg = currentLeg(story);
  const repairing = story.due.kind === 'repair';
  const asks = askWords(story, blocker);
  const how = repairing ? repair.do : shows === undefined ? [] : [shows];
  const room = roomFor(
    {
      how,
      cautions: repair.cautions.map((id) => shortCaution(leg, id)),
      names: cautionNames(leg, repair.cautions),
      aside: where,
      below: rowsOf(asks, columns - 4) + 1,
    },
    columns,
    rows,
  );
  return (
    <>
      <Cautions ids={repair.cautions} leg={leg} as={room.cautions} />
      {room.aside && where !== '' ? <Indented mark="Where:">{where}</Indented> : null}
      {how.map((step, index) => (
        <Indented key={step} mark={repairing ? `  ${index + 1}.` : 'Shows:'} wrap={room.how}>
          {step}
        </Indented>
      ))}
      <Asks>{asks}</Asks>
    </>
  );
}

function askWords(story: Story, blocker: Blocker): string {
  if (blocker.kind === 'prepare') return setUpWords(blocker.preparations, currentLeg(story).shop);
  return story.due.kind === 'repair'
    ? 'y when the repair is done; the proof comes next.'
    : 'y: this is it. o: check something else first. Esc: put the job down.';
}

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
  const apart = story.open.length + story.partsOff.length;
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
      lines: ['e writes the account. n and d still add notes and things to do. q goes Home.'],
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
      `o: another check. r: ${triageOf(story) === undefined ? 'repair' : 'name'} a suspect. b: answer the last check anew. c: close.`,
    ],
  };
}
