import { Box } from 'ink';
import type { AskedCheck, DueOnScreen } from '../app/walk/question.ts';
import type { WalkInput } from '../app/screen.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import { currentLeg, type Leg } from '../core/session/story.ts';
import { byDanger } from '../core/session/rules/cautions.ts';
import { count } from '../core/text.ts';
import { EndBody } from './walk-end.tsx';
import { checkTitle, claimPages, firstBecause } from './claim-rows.ts';
import { ClaimBody } from './claim.tsx';
import { readingWords, type ReadingWords } from '../app/walk/reading-words.ts';
import { textOf, typing } from '../app/typing/typing.ts';
import { shownTyping, TextField } from './field.tsx';
import { Cautions } from './cautions.tsx';
import { Asks, Choices, Ends, Head, Indented, Line } from './parts.tsx';
import {
  conditionFirst,
  despiteRows,
  insistWords,
  roomOf,
  textNeeds,
  textQuestions,
  type Room,
} from './room.ts';
import { spellWords, waitsIn } from '../core/session/timers/durations.ts';
import type { Library } from '../core/tree/shop.ts';
import { healthyWords } from '../app/wording.ts';

type WalkProps = {
  readonly due: DueOnScreen;
  /** Where the title of the complaint stands that this one leads on to. */
  readonly library: Library | undefined;
  readonly input: WalkInput;
  /** Cautions of this step that were read, page by page. */
  readonly seen: readonly (readonly string[])[];
  /** Which page of what is claimed. */
  readonly page: number;
  readonly rows: number;
  readonly columns: number;
};

/** The middle of the walk screen: the one thing to be done now. */
export function WalkBody({ due, library, input, seen, page, ...size }: WalkProps) {
  const { story, asked } = due;
  if (input.kind === 'text')
    return (
      <>
        {despiteRows(due, input).map(({ mark, text }) => (
          <Indented key={text} mark={mark} as="caution">
            {text}
          </Indented>
        ))}
        <TextBody
          input={input}
          columns={size.columns}
          rows={size.rows - textNeeds(due, input, size.columns).least + 1}
        />
      </>
    );
  const pages = claimPages(due, { input, seen }, size);
  if (pages !== undefined) return <ClaimBody page={pages[page] ?? pages.at(-1) ?? []} />;
  return asked === undefined ? (
    <EndBody story={story} library={library} />
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
  const room = roomOf(props, props.columns, props.rows);
  const left = check.how.length - room.steps;
  return (
    <>
      <Head>
        <Ends left={checkTitle(props.due.story, asked)} right={stepHint(check)} as="title" />
      </Head>
      {firstBecause(leg, asked.id).map((reason) => (
        <Indented key={reason} mark="!" as="caution">
          {reason}
        </Indented>
      ))}
      <Cautions ids={byDanger(leg.shop, check.cautions)} leg={leg} as={room.cautions} />
      {check.how.slice(0, room.steps).map((step, index) => (
        <Indented key={step} mark={`  ${index + 1}.`} wrap={room.how}>
          {step}
        </Indented>
      ))}
      {left > 0 && room.more ? (
        <Indented mark="   …" wrap="cut">
          {`${count(left, 'more step')}: i shows ${left === 1 ? 'it' : 'them'}`}
        </Indented>
      ) : null}
      <Answering {...props} room={room} />
    </>
  );
}

/** What kind of look it is, how long it takes, and the first wait it speaks of that is worth a timer. */
function stepHint({ kind, minutes, how }: CheckProps['asked']['check']): string {
  const wait = waitsIn(how).find(({ seconds }) => seconds >= 120);
  return [
    kind,
    ...(minutes === 0 ? [] : [`${minutes} min`]),
    ...(wait === undefined ? [] : [`T waits ${spellWords(wait.seconds)}`]),
  ].join(' · ');
}

type AnsweringProps = CheckProps & { readonly room: Room };

/** The answer part: what must be set first, or the results to pick from. */
function Answering({ due, asked, input, room }: AnsweringProps) {
  const { check } = asked;
  const { blocker, typed } = due;
  const first = conditionFirst(blocker);
  if (first !== '') return <Asks>{first}</Asks>;
  const cursor = input.kind === 'ready' ? input.cursor : (typed?.index ?? -1);
  // In practice the hidden vehicle answers: nothing is typed or picked.
  const byHand = !isPractice(due.story.header);
  return (
    <>
      {room.aside ? <Indented mark="Healthy:">{healthyWords(check)}</Indented> : null}
      {check.reading === undefined || !byHand ? null : (
        <ReadingField
          words={readingWords(due.story, { ...check, reading: check.reading }, typed?.shown)}
          input={input}
        />
      )}
      {input.kind === 'insist' ? (
        <Indented mark="!" as="problem">
          {insistWords(input.why)}
        </Indented>
      ) : null}
      <Box flexShrink={0}>
        <Choices
          choices={check.results.map(({ id, label }) => ({ id, label }))}
          cursor={cursor}
          rows={room.results}
          numbered={check.reading === undefined && byHand}
        />
      </Box>
    </>
  );
}

type ReadingFieldProps = { readonly words: ReadingWords; readonly input: CheckProps['input'] };

function ReadingField({ words: { unit, behind, below }, input }: ReadingFieldProps) {
  const typed = input.kind === 'ready' ? typing() : input.typed;
  // Who types a unit has said which: it is not said again.
  const named = /\d\s*\p{L}/u.test(textOf(typed)) ? '' : ` ${unit}`;
  return (
    <>
      <Box paddingX={1} flexShrink={0}>
        <Box flexShrink={0}>
          <Line as="title">{'Reading > '}</Line>
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

type TextProps = {
  readonly input: Extract<WalkInput, { kind: 'text' }>;
  readonly columns: number;
  readonly rows: number;
};

function TextBody({ input, columns, rows }: TextProps) {
  return (
    <Box paddingX={1} flexDirection="column">
      <Line as="title" wrap="fold">
        {textQuestions[input.purpose]}
      </Line>
      <TextField typed={input.typed} columns={columns} rows={rows} />
    </Box>
  );
}
