import { kinOf } from '../../tree/kin.ts';
import type { Check } from '../../tree/model.ts';
import { neededBy } from '../../tree/states.ts';
import type { ActionOf } from '../action.ts';
import { readAnswer } from '../answer.ts';
import { askedNow } from '../answered.ts';
import { accept, refuse, type Refused, type Ruling } from './ruling.ts';
import type { Payload } from '../event.ts';
import { idsOf } from '../finding-words.ts';
import { impliedPayloads } from '../preparation.ts';
import { awaitsProof } from '../proof.ts';
import { prove } from './prove.ts';
import { stepOfCheck, toBeRead, unreadOf } from './cautions.ts';
import { checkOf, noSuchCheck, toldAt, wordsOf } from './lookup.ts';
import { currentLeg, lastFinding, type Finding, type Story } from '../story.ts';

export function begin(action: ActionOf<'begin'>, story: Story): Ruling {
  const check = checkOf(story, action.check);
  if (check === undefined) return noSuchCheck(story, action.check);
  const early = tooEarly(story, action.check);
  if (early !== undefined) return early;
  const needed = neededBy(currentLeg(story).tree, check);
  return accept(
    [
      {
        kind: 'check-begun',
        check: action.check,
        acknowledged: [...saidRead(story, check, action.acknowledged)],
        ...(action.brought === true && needed !== undefined && { brought: [needed.state] }),
      },
    ],
    [...unmet(story, action.check), ...(action.brought === true ? [] : stateOver(story, check))],
  );
}

/**
 * Records what a check showed. Shown by the complaint's own check while a repair waits for its
 * proof, it is that proof.
 */
export function find(action: ActionOf<'find'>, story: Story): Ruling {
  const check = checkOf(story, action.check);
  if (check === undefined) return noSuchCheck(story, action.check);
  if (awaitsProof(story) && action.check === currentLeg(story).tree.complaint.confirm)
    return prove({ ...action, do: 'prove' }, story);
  const early = tooEarly(story, action.check);
  if (early !== undefined) return early;
  const answered = readAnswer(askedNow(story, action.check, check), action);
  if (answered.kind === 'refused') return answered;
  return accept(
    [
      ...(action.acknowledged === true ? readCautions(story, action.check, check) : []),
      ...impliedPayloads(story, check),
      { kind: 'found', ...answered.shown, ...wordsOf(action), ...toldAt(action) },
    ],
    [
      ...unjudged(answered.needs),
      ...passedOver(story, action, check),
      ...unmet(story, action.check),
      ...stateOver(story, check),
    ],
  );
}

export function unsure(action: ActionOf<'unsure'>, story: Story): Ruling {
  const check = checkOf(story, action.check);
  if (check === undefined) return noSuchCheck(story, action.check);
  if (action.between === undefined)
    return accept([
      ...impliedPayloads(story, check),
      { kind: 'unsure', check: action.check, ...toldAt(action) },
    ]);
  const [result, orResult] = action.between;
  return find({ do: 'find', check: action.check, result, orResult, told: action.told }, story);
}

export function skip(action: ActionOf<'skip'>, story: Story): Ruling {
  if (checkOf(story, action.check) === undefined) return noSuchCheck(story, action.check);
  if (action.reason.trim() === '')
    return refuse('no-reason', 'A check is passed over with a reason.', 'Say why in a few words.');
  return accept([
    { kind: 'skipped', check: action.check, reason: action.reason, ...toldAt(action) },
  ]);
}

/** Cautions of a check that were said to be read: those named, or all that must be. */
const saidRead = (
  story: Story,
  { cautions }: Check,
  acknowledged: ActionOf<'begin'>['acknowledged'],
): readonly string[] =>
  acknowledged === true
    ? toBeRead(story, cautions)
    : cautions.filter(
        (id) => acknowledged !== undefined && acknowledged !== false && acknowledged.includes(id),
      );

/**
 * That the cautions were read, as an event of its own before the answer: those which were shown in
 * full. The others of a check stand beside it in short, and nobody says to have read them.
 */
function readCautions(story: Story, id: string, { cautions }: Check): Payload[] {
  const acknowledged = [...toBeRead(story, cautions)];
  return acknowledged.length > 0
    ? [{ kind: 'check-begun', check: id, acknowledged, implied: true }]
    : [];
}

/** That the passing state in which alone a check tells anything was spent by an earlier step. */
function stateOver(story: Story, check: Check): readonly string[] {
  const needed = neededBy(currentLeg(story).tree, check);
  return needed === undefined || !story.over.includes(needed.state)
    ? []
    : [
        `This tells something only while ${needed.say}; a step before has spent that, and nobody said it is so again.`,
      ];
}

/** That a reading had to be judged as it was read. */
const unjudged = (needs: string | undefined): readonly string[] =>
  needs === undefined
    ? []
    : [`The ${needs} here is not recorded: the reading was judged as it was read.`];

function passedOver(story: Story, action: ActionOf<'find'>, check: Check): readonly string[] {
  if (action.acknowledged === true) return [];
  const { shop } = currentLeg(story);
  return toBeRead(story, unreadOf(story, stepOfCheck(action.check, check))).map(
    (id) => `Caution not acknowledged: ${shop.cautions[id]?.hazard ?? id}.`,
  );
}

/** A check that must show something before another can be judged, and whether it has shown anything. */
export type Waited = { readonly check: string; readonly seen: boolean; readonly words: string };

/** What a check still has to wait for before its answer means anything. */
export function waitsFor(story: Story, id: string): readonly Waited[] {
  const { checks } = currentLeg(story).tree;
  return Object.entries(checks[id]?.after ?? {}).flatMap(([before, results]): readonly Waited[] => {
    const gate = checks[before];
    if (before === id || gate === undefined) return [];
    const shown = shownAs(story, before, gate);
    if (shown.length > 0 && shown.every((one) => results.includes(one))) return [];
    const words = `This can be judged only after "${gate.ask}" has shown good.`;
    return [{ check: before, seen: shown.length > 0, words }];
  });
}

const unmet = (story: Story, id: string): readonly string[] =>
  waitsFor(story, id).map(({ words }) => words);

/**
 * Refuses a check whose answer would mean nothing yet: it would move the suspects all the same. One
 * that the walk itself asks, since what it waits for was passed by or is behind a repair, is only told.
 */
function tooEarly(story: Story, id: string): Refused | undefined {
  const { due } = story;
  const [waited] = waitsFor(story, id);
  if (waited === undefined || (due.kind === 'check' && due.check === id)) return undefined;
  const mend = waited.seen
    ? 'It has not: mend what it shows, or make another check.'
    : `Make that check first: "${waited.check}".`;
  return refuse('too-early', waited.words, mend, id);
}

/** What a check, or a later one that shows the same, was last found to show, as results of the first. */
function shownAs(story: Story, id: string, { results }: Check): readonly string[] {
  const { tree } = currentLeg(story);
  const last = kinOf(tree, id)
    .flatMap((one) => lastFinding(story, one) ?? [])
    .reduce<Finding | undefined>(
      (latest, one) => (latest === undefined || one.n > latest.n ? one : latest),
      undefined,
    );
  const kin = last && tree.checks[last.check];
  if (last === undefined || kin === undefined) return [];
  return idsOf(kin, last).map(
    (shown) => results[kin.results.findIndex((one) => one.id === shown)]?.id ?? shown,
  );
}
