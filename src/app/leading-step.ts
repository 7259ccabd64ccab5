import { quickAdvice } from '../core/reason/advice/advise.ts';
import type { Advice } from '../core/reason/advice/advice.ts';
import { inputFrom, leftOut, ownStep } from '../core/reason/history/from-story.ts';
import { unlisted } from '../core/tree/model.ts';
import { nextOnWay } from '../core/tree/way/way.ts';
import { doneIn, inHand } from '../core/session/due.ts';
import { showsDanger } from '../core/session/safeguard.ts';
import { triageOf } from '../core/session/triage.ts';
import { currentLeg, type Due, type Story } from '../core/session/story.ts';
import { prudenceOf, type Prudence } from '../core/reason/prudence.ts';
import type { Settings } from '../core/settings.ts';
import { adviceIsHint, hidesAdvice } from './practice-rules.ts';
import { transition, type Transition } from './effect.ts';
import { walk } from './screen.ts';
import type { OpenSession, State } from './state.ts';

type LedStory = Pick<OpenSession, 'story' | 'own' | 'advice' | 'unadvised'>;

/** A story as its events make it, led by the tree's own way or by the quicker one. */
export function ledStory(
  story: Story,
  settings: Pick<Settings, 'lead' | 'hour' | 'sure'>,
): LedStory {
  const own = story.due;
  if (hidesAdvice(story)) return { story, own, advice: undefined, unadvised: adviceIsHint };
  const leads = own.kind === 'exhausted' || (settings.lead === 'quicker' && mayLead(story));
  if (!leads) return { story, own, advice: undefined, unadvised: undefined };
  const advice = adviseAtOnce(story, prudenceOf(settings));
  const step = advice && stepOf(advice);
  const due = !goesPast(story, advice, settings) && isPastEnd(story) ? undefined : step;
  return {
    story: due === undefined ? story : { ...story, due },
    own,
    advice,
    unadvised: undefined,
  };
}

/**
 * Steps that the advice may take the place of: not one the mechanic chose, none that is due, no end
 * that an abnormal answer leads to (there may be danger), and not the complaint's own test, without
 * which nothing can be proven, nor what makes that test safe.
 */
export function mayLead(story: Story): boolean {
  const { due } = story;
  if (due.kind === 'check') return due.why === 'way' && isComplaintKnown(story);
  return due.kind === 'named' || (due.kind === 'stop' && isRunOut(story));
}

/**
 * Whether the way ends because the last look was healthy, with nothing named: its reason speaks of
 * looks that a way led by the advice may have passed by.
 */
function isRunOut(story: Story): boolean {
  const last = doneIn(story).at(-1);
  return (
    last?.kind === 'shown' &&
    last.check !== currentLeg(story).tree.complaint.confirm &&
    last.result === 0 &&
    inHand(story).condemned === undefined
  );
}

/** Whether the tree's own way ends here, or has ended since the last repair and the advice went on. */
function isPastEnd(story: Story): boolean {
  if (story.due.kind === 'stop') return true;
  const { tree } = currentLeg(story);
  const done = doneIn(story);
  const repaired = done.findLastIndex(({ kind }) => kind === 'repaired');
  return done.some(
    (_, at) => at > repaired && nextOnWay(tree, done.slice(0, at + 1)).kind === 'stop',
  );
}

/** Whether the complaint's own test was answered or passed by. Until then the way leads only to it. */
function isComplaintKnown(story: Story): boolean {
  const { confirm } = currentLeg(story).tree.complaint;
  return doneIn(story).some((done) => 'check' in done && done.check === confirm);
}

/**
 * The quick answer, worked out on the spot: a key must never meet a step that changes behind it.
 * Nothing where the findings are none of the tree's; then the tree leads.
 */
function adviseAtOnce(story: Story, prudence: Prudence): Advice | undefined {
  const made = inputFrom(story, prudence);
  if (made.kind === 'bad') return undefined;
  const own = ownStep(story);
  const advice = quickAdvice(made.value, { leaveOut: leftOut(story), ...(own && { own }) });
  return advice.kind === 'good' ? advice.value : undefined;
}

/**
 * Past the end of the way the advice asks, and names only what it is sure of: a guess is nobody's to
 * buy, and nothing is bought while a safeguard is shut: what shut it comes first.
 */
function goesPast(
  story: Story,
  advice: Advice | undefined,
  settings: Pick<Settings, 'hour' | 'sure'>,
): boolean {
  const first = advice?.next[0];
  if (first === undefined || first.do === 'check') return first !== undefined;
  const chance = advice?.suspects.find(({ cause }) => cause === first.id)?.chance ?? 0;
  const onlySorts = triageOf(story) !== undefined;
  return chance >= prudenceOf(settings).sure && (onlySorts || !showsDanger(story));
}

function stepOf({ next }: Advice): Due | undefined {
  const [first] = next;
  if (first === undefined || first.id === unlisted) return undefined;
  return first.do === 'check'
    ? { kind: 'check', check: first.id, why: 'advised' }
    : { kind: 'named', cause: first.id };
}

/** Leads by the other way from here on: the tree's own, or the quicker one. */
export function switchLead(state: State): Transition {
  const lead = state.settings.lead === 'tree' ? 'quicker' : 'tree';
  const settings = { ...state.settings, lead } as const;
  const { session } = state;
  const led = session && {
    ...session,
    ...ledStory({ ...session.story, due: session.own }, settings),
  };
  const text = lead === 'tree' ? "The tree's own way leads." : 'The quicker way leads.';
  return transition(
    { ...state, settings, session: led, screen: walk, notice: { kind: 'info', text } },
    { kind: 'advise' },
    { kind: 'save-settings', settings },
  );
}
