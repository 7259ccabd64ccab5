import { clockTime } from '../../core/session/clock.ts';
import { contradictions, settlings, type Contradiction } from '../../core/session/contradiction.ts';
import type { Settling } from '../../core/session/kinds/shapes.ts';
import { checkIn, type Finding, type Story } from '../../core/session/story.ts';
import { inform, show, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import type { Page } from '../page.ts';
import { walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { findingWords } from '../wording.ts';
import { isSpent } from '../keys/run.ts';
import { afterAction } from './answer.ts';

const labels: Readonly<Record<Settling, string>> = {
  'misread-then': 'misread then: the earlier one does not count',
  'misread-now': 'misread now: the newer one does not count',
  'comes-and-goes': 'comes and goes: both are right',
  'new-since': 'new since the repair: both are right',
};

/** What the contradiction that is asked about can be; the program never settles it by itself. */
export const contradictionLines = (story: Story) => {
  const found = contradictions(story).at(-1);
  return found === undefined ? [] : settlings(found).map((as) => ({ as, label: labels[as] }));
};

/** The two findings that contradict one another, for the page that asks. */
export function contradictionFacts(story: Story): readonly string[] {
  const found = contradictions(story).at(-1);
  if (found === undefined) return ['Nothing contradicts anything now.'];
  const between = found.repairsBetween > 0 ? ', after a repair' : '';
  return [
    checkIn(story, found.check, found.later.leg)?.ask ?? found.check,
    `then  ${shown(story, found.earlier)}`,
    `now   ${shown(story, found.later)}${between}`,
  ];
}

function shown(story: Story, finding: Finding): string {
  const leg = story.legs[finding.leg];
  const words = leg === undefined ? finding.result : findingWords(finding, leg);
  return `${clockTime(finding.stamp.at)}  ${words}`;
}

/** The line under every step while a contradiction waits for its answer; else empty. */
export const openLine = (story: Story): string =>
  contradictions(story).length === 0 ? '' : 'OPEN      a check got worse: which is it? (z)';

/** No line is marked at first: Enter by itself says nothing. */
const asked: At<'contradiction'> = { kind: 'contradiction', cursor: -1 };

export const contradictionPage: Page<'contradiction'> = {
  mode: () => 'list',
  open: (state) =>
    state.session === undefined || contradictions(state.session.story).length === 0
      ? inform(state, 'No finding contradicts an earlier one.')
      : show(state, asked),
  update,
};

function update(state: State, screen: At<'contradiction'>, press: KeyPress): Transition {
  const found = state.session && contradictions(state.session.story).at(-1);
  if (state.session === undefined || found === undefined || press.command === 'go-back')
    return show(state, walk);
  const lines = contradictionLines(state.session.story);
  const line = picked(screen.cursor, press, lines);
  if (line !== undefined && press.command === 'pick-line' && isSpent(state, press.token))
    return inform(
      { ...state, screen: { ...screen, cursor: lines.indexOf(line) } },
      'Enter says it.',
    );
  if (line !== undefined) return settle(state, line.as, found);
  const moves = press.command === 'up' || press.command === 'down';
  return moves
    ? show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) })
    : inform(state, 'Press its number, or mark a line; esc: later.');
}

/** Said of one pair; an older finding of the same check may contradict what is left, and is asked next. */
function settle(state: State, as: Settling, { later }: Contradiction): Transition {
  const said = afterAction(takeAction(state, { do: 'settle', as, n: later.n }));
  const { session } = said.state;
  const again =
    session !== undefined && contradictions(session.story).some((one) => one.later.n === later.n);
  return again ? { ...said, state: { ...said.state, screen: asked } } : said;
}
