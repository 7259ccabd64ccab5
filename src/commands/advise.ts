import { refinedAdvice } from '../core/reason/advice/advise.ts';
import type { Advice } from '../core/reason/advice/advice.ts';
import { inputFrom, leftOut, noOdds, ownStep } from '../core/reason/history/from-story.ts';
import {
  adviceSentence,
  heldLines,
  savesWords,
  stepWords,
} from '../core/reason/history/wording.ts';
import { gradedNames, sidesOf, suspectsNow } from '../core/reason/history/suspect-words.ts';
import { bad, good, type Parsed } from '../core/problem.ts';
import { prudenceOf, type Prudence } from '../core/reason/prudence.ts';
import { fold } from '../core/session/fold.ts';
import { openQuestions } from '../core/session/contradiction.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { cleanLine } from '../core/text.ts';
import type { Counted } from '../core/tree/counted/counted.ts';
import { countedSentence } from '../core/tree/counted/words.ts';
import type { Tree } from '../core/tree/model.ts';
import { isOwn } from '../core/tree/own/bare.ts';
import { readSettings } from '../store/settings.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { hidesAdvice } from '../app/practice-rules.ts';
import { recordWarning } from '../core/session/record/damage.ts';
import { recordJson, withSession } from './session.ts';
import { uses } from './uses.ts';

/** `droplight advise SESSION`: the suspects and what to do next. Never opens it for writing. */
export async function advise(io: Io, args: readonly string[]): Promise<Ended> {
  return withSession(io, args, uses.advise, ({ given, recovered }) => {
    const story = fold(recovered.header, recovered.events);
    if (isOwn(currentLeg(story).tree))
      return adviseNothing(io, given.flag('json'), story, recovered.damage);
    if (hidesAdvice(story)) return bad(aHint);
    const prudence = prudenceOf(readSettings(io.disk.files, io.folders.settings));
    const advice = adviceFor(story, prudence);
    if (advice.kind === 'bad') return advice;
    const { tree } = currentLeg(story);
    const warned = [recordWarning(recovered.damage)].filter((one) => one !== undefined);
    if (given.flag('json'))
      printJson(io, {
        record: recordJson(recovered.damage),
        ...adviceJson(tree, overOrNot(story, advice.value)),
        openQuestions: openQuestions(story),
      });
    else io.out(`${[...warned, ...adviceLines(story, advice.value)].map(cleanLine).join('\n')}\n`);
    return done;
  });
}

/** In practice nobody gets the advice for nothing. */
const aHint = {
  code: 'advice-is-hint',
  message: 'This is practice on a hidden fault: the advice is a hint, and costs minutes.',
  mend: 'Take one on the walk (A), or with {"do":"hint"} through "droplight enter".',
};

/** A job without a tree: its causes as the person named them, and no number that nobody gave. */
function adviseNothing(
  io: Io,
  json: boolean,
  story: Story,
  damage: Parameters<typeof recordJson>[0],
): typeof done {
  const named = Object.entries(currentLeg(story).tree.causes);
  if (json)
    printJson(io, {
      record: recordJson(damage),
      suspects: named.map(([cause, { name }]) => ({ cause, name, chance: null })),
      unlisted: null,
      coverage: null,
      next: [],
      held: [],
      because: noOdds.message,
      openQuestions: openQuestions(story),
    });
  else
    io.out(
      `${[recordWarning(damage), noOdds.message, ...named.map(([, { name }]) => `- named: ${name}`)]
        .filter((line) => line !== undefined)
        .map(cleanLine)
        .join('\n')}\n`,
    );
  return done;
}

function adviceFor(story: Story, prudence: Prudence): Parsed<Advice> {
  const made = inputFrom(story, prudence);
  if (made.kind === 'bad') return made;
  const own = ownStep(story);
  const advice = refinedAdvice(made.value, {
    leaveOut: leftOut(story),
    ...(own !== undefined && { own }),
  });
  return advice.kind === 'bad' ? advice : good(advice.value);
}

/** A job that is over has no next step, whoever asks. */
const overOrNot = (story: Story, advice: Advice): Advice =>
  story.closed === undefined ? advice : { ...advice, next: [], held: [] };

/** Whose jobs moved the odds and minutes that this rests on. */
const ownJobsJson = ({ jobs, weight, checks, minutesWeight }: Counted) => ({
  jobs,
  treeWeighs: weight,
  checksMeasured: Object.keys(checks).length,
  treeMinutesWeigh: minutesWeight,
});

/** Chances and minutes as full doubles: rounding is for screens. */
function adviceJson(tree: Tree, advice: Advice) {
  return {
    suspects: advice.suspects,
    unlisted: advice.unlisted,
    coverage: advice.coverage,
    next: advice.next.map(({ do: kind, id, minutes, parts, cost, expectedLeft, versusTree }) => ({
      do: kind,
      id,
      minutes,
      parts,
      cost,
      expectedLeft: expectedLeft ?? null,
      versusTree: versusTree ?? null,
    })),
    held: advice.held,
    because: adviceSentence(tree, advice),
    ...(tree.counted !== undefined && { ownJobs: ownJobsJson(tree.counted) }),
  };
}

/** What the advice comes to for a person; a job that is over gets no suspects and no next step. */
function adviceLines(story: Story, advice: Advice): readonly string[] {
  const { tree } = currentLeg(story);
  if (story.closed !== undefined) return ['This job is closed: there is no next step.'];
  return [
    adviceSentence(tree, advice),
    ...suspectLines(tree, advice),
    ...(advice.next.length === 0 ? [] : ['Next, the best first:']),
    ...advice.next.slice(0, 8).map((step) => {
      const saves = savesWords(step.versusTree);
      return `- ${stepWords(tree, step)} (${Math.round(step.minutes)} min${saves === '' ? '' : `; ${saves}`})`;
    }),
    ...heldLines(tree, advice).map((line) => `- ${line}`),
    ...[countedSentence(tree)].filter((line) => line !== undefined),
  ];
}

/** The suspects by what the first step would part; by how strongly they are suspected where it parts none. */
function suspectLines(tree: Tree, advice: Advice): readonly string[] {
  const suspects = suspectsNow(advice);
  const [first] = advice.next;
  const sides = first?.do === 'check' ? sidesOf(tree, first.id, suspects) : [];
  if (first === undefined || sides.length === 0)
    return ['Suspects:', ...gradedNames(tree, suspects).map((names) => `- ${names}`)];
  return [
    `Suspects, by what "${stepWords(tree, first)}" would part:`,
    ...sides.map(({ shows, names }) => `- ${shows}: ${names(Infinity)}`),
  ];
}
