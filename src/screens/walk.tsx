import { Box, Text } from 'ink';
import type { AskedCheck, Blocker, DueOnScreen } from '../app/walk/question.ts';
import type { WalkInput } from '../app/screen.ts';
import { currentLeg, type Leg } from '../core/session/story.ts';
import { byDanger } from '../core/session/rules/cautions.ts';
import type { Check } from '../core/tree/model.ts';
import { EndBody } from './walk-end.tsx';
import { checkTitle, claimPages, firstBecause, reasonRows } from './claim-rows.ts';
import { ClaimBody } from './claim.tsx';
import { hasRowBelow, readingWords, type ReadingWords } from '../app/walk/reading-words.ts';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import { textOf, typing } from '../app/typing/typing.ts';
import { shownTyping, TextField } from './field.tsx';
import { Cautions } from './cautions.tsx';
import { Asks, Choices, Ends, Head, Indented, Line } from './parts.tsx';
import { roomFor, rowsOf, type Room } from './room.ts';
import { conditionNames, healthyWords } from '../app/wording.ts';

type WalkProps = {
  readonly due: DueOnScreen;
  readonly input: WalkInput;
  /** Cautions of this step that were read, page by page. */
  readonly seen: readonly (readonly string[])[];
  /** Which page of what is claimed. */
  readonly page: number;
  readonly rows: number;
  readonly columns: number;
};

/** The middle of the walk screen: the one thing to be done now. */
export function WalkBody({ due, input, seen, page, ...size }: WalkProps) {
  const { story, asked, blocker } = due;
  if (input.kind === 'text')
    return (
      <>
        {input.purpose === 'despite' && blocker.kind === 'safeguard'
          ? reasonRows(story, blocker.holds, false).map(({ mark, text }) => (
              <Indented key={text} mark={mark} as="caution">
                {text}
              </Indented>
            ))
          : null}
        <TextBody input={input} columns={size.columns} rows={size.rows - 3} />
      </>
    );
  const pages = claimPages(due, { input, seen }, size);
  if (pages !== undefined) return <ClaimBody page={pages[page] ?? pages.at(-1) ?? []} />;
  return asked === undefined ? (
    <EndBody story={story} />
  ) : (
    <CheckBody {...{ due, asked, input }} {...size} leg={currentLeg(story)} />
  );
}

type CheckProps = {
  readonly due: DueOnScreen;
  readonly asked: AskedCheck;
  readonly input: Exclude<WalkInput, { kind: 'text' }>;
  readonly leg: Leg;
  readonly rows: number;
  readonly columns: number;
};

function CheckBody(props: CheckProps) {
  const { asked, leg } = props;
  const { check } = asked;
  const room = roomOf(props);
  return (
    <>
      <Head>
        <Ends
          left={checkTitle(props.due.story, asked)}
          right={`${check.kind} · ${check.minutes} min`}
          as="title"
        />
      </Head>
      {firstBecause(leg, asked.id).map((reason) => (
        <Indented key={reason} mark="!" as="caution">
          {reason}
        </Indented>
      ))}
      <Cautions ids={byDanger(leg.shop, check.cautions)} leg={leg} as={room.cautions} />
      {check.how.map((step, index) => (
        <Indented key={step} mark={`  ${index + 1}.`} wrap={room.how}>
          {step}
        </Indented>
      ))}
      <Answering {...props} healthy={room.aside} />
    </>
  );
}

function roomOf({ due: { blocker }, asked, leg, rows, columns }: CheckProps): Room {
  const { check } = asked;
  const first = firstWords(blocker);
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
function Answering({ due, asked, input, healthy }: AnsweringProps) {
  const { check } = asked;
  const { blocker, typed } = due;
  const first = firstWords(blocker);
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

/** What is to be said before the check can be answered; empty where nothing is. */
const firstWords = (blocker: Blocker): string =>
  blocker.kind === 'condition'
    ? `This reading is judged by the ${conditionNames[blocker.condition]}. Enter: type it. u: not known, judge it as it is read.`
    : '';

type ReadingFieldProps = { readonly words: ReadingWords; readonly input: CheckProps['input'] };

function ReadingField({ words: { unit, behind, below }, input }: ReadingFieldProps) {
  const typed = input.kind === 'ready' ? typing() : input.typed;
  // Who types a unit has said which: it is not said again.
  const named = /\d\s*\p{L}/u.test(textOf(typed)) ? '' : ` ${unit}`;
  return (
    <>
      <Box paddingX={1} flexShrink={0}>
        <Box flexShrink={0}>
          <Text bold>{'Reading > '}</Text>
        </Box>
        <Line as="title">{`${shownTyping(typed)}${named}${behind}`}</Line>
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
  found: 'It is this: recorded. What exactly was found, and where? May stay empty.',
  despite: 'Why do you go on all the same? The account will say it.',
} as const;

type TextProps = {
  readonly input: Extract<WalkInput, { kind: 'text' }>;
  readonly columns: number;
  readonly rows: number;
};

function TextBody({ input, columns, rows }: TextProps) {
  return (
    <Box paddingX={1} flexDirection="column">
      <Line as="title" wrap="fold">
        {questions[input.purpose]}
      </Line>
      <TextField typed={input.typed} columns={columns} rows={rows} />
    </Box>
  );
}
