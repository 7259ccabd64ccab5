import { readWords, resultWords } from '../../core/session/finding-words.ts';
import { checkIn, type Finding, type Story } from '../../core/session/story.ts';
import { count } from '../../core/text.ts';
import { plannedMinutes } from '../../core/reason/practice/minutes.ts';
import { payloadOf } from '../../core/session/correct.ts';
import { revealedWords } from '../../core/account/clauses/practice.ts';
import { sentence } from '../../core/account/words/wording.ts';
import { show, transition, type Transition } from '../effect.ts';
import type { Page } from '../page.ts';
import { walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from './answer.ts';
import type { DueOnScreen } from './question.ts';

/** Makes the check on screen: the hidden vehicle answers, and its answer is read before the walk goes on. */
export function makeCheck(state: State, { asked }: DueOnScreen): Transition {
  if (asked === undefined) return transition(state);
  const acted = takeAction(state, { do: 'make', check: asked.id });
  const next = afterAction(acted);
  if (acted.outcome.kind === 'refused') return next;
  const found = acted.state.session?.story.findings.at(-1);
  if (found === undefined) return next;
  const screen = { kind: 'answered', n: found.n, from: next.state.screen, cursor: 0 } as const;
  return show({ ...next.state, notice: undefined }, screen, ...next.effects);
}

/** What the vehicle has shown; Enter or any way back goes on, and nothing is recorded by it. */
export const answeredPage: Page<'answered'> = {
  mode: () => 'answered',
  update: (state, screen, { command }) =>
    command === 'go-back' || command === 'choose'
      ? show(state, screen.from.kind === 'contradiction' ? screen.from : walk)
      : transition(state),
};

/** The answer as the page tells it. */
export function answeredLines(story: Story, { n }: At<'answered'>): readonly string[] {
  const found = story.findings.find((one) => one.n === n);
  const check = found && checkIn(story, found.check, found.leg);
  if (found === undefined || check === undefined) return ['It was taken back.'];
  return [
    check.ask,
    ' ',
    `THE VEHICLE SHOWS   ${shownWords(found, story)}`,
    `Healthy             ${check.healthy ?? check.results[0]?.label ?? ''}`,
    `It took             ${count(Math.round(minutesOf(found, story)), 'minute')}`,
    ...ending(story, found),
  ];
}

function shownWords(found: Finding, story: Story): string {
  const check = checkIn(story, found.check, found.leg);
  if (check === undefined) return '';
  const read = readWords(check, found);
  const stands = resultWords(check, found);
  return read === '' ? stands : `${read}: ${stands}`;
}

function minutesOf({ n }: Finding, story: Story): number {
  const event = story.entries.find((entry) => entry.event.n === n)?.event;
  const said = event && payloadOf(event);
  return said === undefined ? 0 : plannedMinutes(story, said);
}

/** With a good proof the fault is told. */
function ending(story: Story, { proof }: Finding): readonly string[] {
  const { revealed } = story;
  if (!proof || revealed === undefined) return [];
  return [' ', `PROVEN. ${sentence(revealedWords(story, revealed))}`];
}
