import { Box, Text } from 'ink';
import type { AskedCheck, Blocker, DueOnScreen } from '../app/walk/question.ts';
import type { WalkInput } from '../app/screen.ts';
import { currentLeg, type Leg } from '../core/session/story.ts';
import type { Check } from '../core/tree/model.ts';
import { firstBecause, Reasons, SafeguardBody } from './walk-safeguard.tsx';
import { CauseBody, EndBody } from './walk-cause.tsx';
import { hasRowBelow, readingWords, type ReadingWords } from '../app/walk/reading-words.ts';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import { CautionPage, Cautions } from './cautions.tsx';
import { Asks, Choices, Ends, Head, Indented, Line } from './parts.tsx';
import { roomFor, rowsOf, type Room } from './room.ts';
import { conditionNames, healthyWords, setUpWords, stateWords } from '../app/wording.ts';

type WalkProps = {
  readonly due: DueOnScreen;
  readonly input: WalkInput;
  /** Cautions of this step that were paged past. */
  readonly seen: number;
  readonly rows: number;
  readonly columns: number;
};

/** The middle of the walk screen: the one thing to be done now. */
export function WalkBody({ due, input, ...size }: WalkProps) {
  const { story, asked, cause, blocker } = due;
  if (input.kind === 'text')
    return (
      <>
        {input.purpose === 'despite' ? <Reasons story={story} blocker={blocker} /> : null}
        <TextBody input={input} />
      </>
    );
  if (blocker.kind === 'safeguard') return <SafeguardBody due={due} holds={blocker.holds} />;
  if (asked !== undefined)
    return <CheckBody {...{ due, asked, input }} {...size} leg={currentLeg(story)} />;
  return cause === undefined ? (
    <EndBody story={story} />
  ) : (
    <CauseBody due={due} named={cause} {...size} />
  );
}

type CheckProps = {
  readonly due: DueOnScreen;
  readonly asked: AskedCheck;
  readonly input: Exclude<WalkInput, { kind: 'text' }>;
  readonly leg: Leg;
  readonly seen: number;
  readonly rows: number;
  readonly columns: number;
};

const purposes = { check: '', proof: 'PROOF: ', correct: 'ANSWER ANEW: ' } as const;

function CheckBody(props: CheckProps) {
  const { asked, leg, seen } = props;
  const { blocker } = props.due;
  const { check, purpose } = asked;
  const room = roomOf(props);
  return (
    <>
      <Head>
        <Ends
          left={`${purposes[purpose]}${check.ask}`}
          right={`${check.kind} · ${check.minutes} min`}
          as="title"
        />
      </Head>
      {blocker.kind === 'caution' ? (
        <CautionPage cautions={blocker.cautions} leg={leg} seen={seen} />
      ) : (
        <>
          {firstBecause(leg, asked.id).map((reason) => (
            <Indented key={reason} mark="!" as="caution">
              {reason}
            </Indented>
          ))}
          <Cautions ids={check.cautions} leg={leg} as={room.cautions} />
          {check.how.map((step, index) => (
            <Indented key={step} mark={`  ${index + 1}.`} wrap={room.how}>
              {step}
            </Indented>
          ))}
          <Answering {...props} healthy={room.aside} />
        </>
      )}
    </>
  );
}

function roomOf({ due: { blocker }, asked, leg, rows, columns }: CheckProps): Room {
  const { check } = asked;
  const first = firstWords(blocker, leg);
  const reasons = firstBecause(leg, asked.id).map((reason) => rowsOf(reason, columns - 4));
  const below =
    first === '' ? check.results.length + readingRows(check) : rowsOf(first, columns - 4) + 1;
  return roomFor(
    {
      how: check.how,
      cautions: check.cautions.map((id) => shortCaution(leg, id)),
      names: cautionNames(leg, check.cautions),
      aside: first === '' ? healthyWords(check) : '',
      below: reasons.reduce((sum, taken) => sum + taken, below),
    },
    columns,
    rows,
  );
}

/** Rows that the field of a reading takes, with what stands below it. */
function readingRows(check: Check): number {
  if (check.reading === undefined) return 0;
  return hasRowBelow(check) ? 2 : 1;
}

type AnsweringProps = CheckProps & { readonly healthy: boolean };

/** The answer part: what must be set first, or the results to pick from. */
function Answering({ due, asked, input, leg, healthy }: AnsweringProps) {
  const { check } = asked;
  const { blocker, typed } = due;
  const first = firstWords(blocker, leg);
  if (first !== '') return <Asks>{first}</Asks>;
  const cursor = input.kind === 'ready' ? input.cursor : (typed?.index ?? -1);
  return (
    <>
      {healthy ? <Indented mark="Healthy:">{healthyWords(check)}</Indented> : null}
      {check.reading === undefined ? null : (
        <ReadingField
          words={readingWords(due.story, { ...check, reading: check.reading }, typed?.shown)}
          input={input}
        />
      )}
      {input.kind === 'insist' ? (
        <Indented mark="!" as="problem">
          {`${input.why} Is it really so? ! keeps it, Esc reads again.`}
        </Indented>
      ) : null}
      <Box flexShrink={0}>
        <Choices
          choices={check.results.map(({ id, label }) => ({ id, label }))}
          cursor={cursor}
          rows={check.results.length}
        />
      </Box>
    </>
  );
}

/** What is to be done or said before the check can be answered; empty where nothing is. */
function firstWords(blocker: Blocker, { shop }: Leg): string {
  switch (blocker.kind) {
    case 'prepare':
      return setUpWords(blocker.preparations, shop);
    case 'state':
      return `First: ${stateWords(blocker.needed)}. y when it is so.`;
    case 'condition':
      return `This reading is judged by the ${conditionNames[blocker.condition]}. Enter: type it. u: not known, judge it as it is read.`;
    case 'safeguard':
    case 'caution':
    case 'nothing':
      return '';
  }
}

type ReadingFieldProps = { readonly words: ReadingWords; readonly input: CheckProps['input'] };

function ReadingField({ words: { unit, behind, below }, input }: ReadingFieldProps) {
  const typed = input.kind === 'ready' ? '' : input.typed;
  return (
    <>
      <Box paddingX={1} flexShrink={0}>
        <Box flexShrink={0}>
          <Text bold>{'Reading > '}</Text>
        </Box>
        <Line as="title">{`${typed}_ ${unit}${behind}`}</Line>
      </Box>
      {below === undefined ? null : (
        <Indented mark="        " as="title" wrap="cut">
          {below}
        </Indented>
      )}
    </>
  );
}

const questions = {
  note: 'Note',
  skip: 'Why can it not be done?',
  'part-off': 'Which part is off, and where is it?',
  'follow-up': 'What is still to do?',
  altitude: 'Height above sea level (such as 5200ft)',
  temperature: 'Air temperature (such as 70F)',
  despite: 'Why do you go on all the same? The account will say it.',
} as const;

function TextBody({ input }: { input: Extract<WalkInput, { kind: 'text' }> }) {
  return (
    <Box paddingX={1} flexDirection="column">
      <Line as="title">{questions[input.purpose]}</Line>
      <Line wrap="fold">{`> ${input.typed}_`}</Line>
    </Box>
  );
}
