import type { Due } from '../../../src/core/session/story.ts';
import { gatesOfStanding } from '../../../src/core/tree/way/gates.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import type { Lead } from './drive.ts';
import type { Drive, Step } from './shape.ts';
import { isWhile, leftOf, type Script, type Shows } from './script.ts';

/** A drive may take so many times the steps of a master. */
const timesMaster = 1.5;

/** Repairs of causes that were not there, or named so for an inspection; an act that needs no part and can be taken back is none. */
export const wrongRepairs = (
  script: Script,
  { mended, condemned, tree }: Drive,
): readonly string[] =>
  (tree.triage === undefined ? mended : condemned).filter(
    (cause) => !script.causes.includes(cause) && tree.causes[cause]?.repair.try !== true,
  );

/** The steps as a master counts them: tries of one proof in a row are one. */
export const countedSteps = (steps: readonly Step[]): number =>
  steps.filter((step, index) => step.do !== 'proof' || steps[index - 1]?.do !== 'proof').length;

/** All that went wrong on a drive, a line each; none for one that a master would sign. */
export function faultsOf(script: Script, done: Drive, lead: Lead): readonly string[] {
  const wrong = wrongRepairs(script, done);
  const most = script.wrongAtMost ?? (lead === 'tree' ? 1 : 0);
  const steps = countedSteps(done.steps);
  return [
    ...done.troubles,
    ...endFaults(script, done),
    ...forbidden(script, done),
    ...(wrong.length > most ? [`repaired what was sound: ${wrong.join(', ')}`] : []),
    ...(steps > timesMaster * script.master
      ? [`${steps} steps, a master takes ${script.master} (at most ${timesMaster} times that)`]
      : []),
  ];
}

function endFaults(script: Script, done: Drive): readonly string[] {
  const { end } = done;
  const left = leftOf(script, done.mended);
  const still = left.length > 0 ? [`still there: ${left.join(', ')}`] : [];
  const asEnded = `it ended ${endWords(end)}`;
  switch (script.end) {
    case 'mended':
      if (end.kind !== 'proven' || !done.closesFixed) return [asEnded, ...still];
      return still;
    case 'inspection':
      // What else is wrong the inspection finds: nothing here is to be looked for on and on.
      return [
        ...(done.condemned.length === 0 ? [asEnded] : []),
        ...(done.closesFixed ? ['it could be closed as fixed'] : []),
      ];
    case 'unlisted':
      return [
        ...(end.kind === 'stop' || end.kind === 'exhausted' ? [] : [asEnded]),
        ...boughtFor(done).map((cause) => `a part was bought for ${cause}`),
      ];
    default:
      return end.kind === 'leg' && `tree:${end.tree}` === script.end ? [] : [asEnded];
  }
}

/** Steps before the first repair that nobody may take on this vehicle; its complaint was met before. */
function forbidden(
  { never, neverWith: before }: Script,
  { steps, tree }: Drive,
): readonly string[] {
  const { checks, complaint } = tree;
  const safeguards = before && [{ before, check: complaint.confirm, shows: [], else: '' }];
  const wary: Tree = { ...tree, safeguards };
  const repair = steps.findIndex((step) => step.do === 'repair');
  return steps
    .slice(0, repair < 0 ? steps.length : repair)
    .filter(({ id }) => id !== complaint.confirm)
    .filter(
      ({ id }) =>
        never.includes(id) || gatesOfStanding(wary, checks[id]?.standing ?? {}).length > 0,
    )
    .map(({ id }) => `"${id}" may not be asked of this vehicle`);
}

const boughtFor = ({ mended, tree }: Drive): readonly string[] =>
  mended.filter((cause) => {
    const { part, parts = [] } = tree.causes[cause]?.repair ?? {};
    return part === undefined ? parts.length > 0 : part !== 'none';
  });

/** How a drive ended, in words. */
export function endWords(end: Due): string {
  switch (end.kind) {
    case 'proven':
      return 'proven';
    case 'stop':
      return `at a stop: ${end.reason}`;
    case 'leg':
      return `with the tree ${end.tree}: ${end.reason}`;
    case 'exhausted':
      return `with nothing left to do: ${end.reason}`;
    default:
      return `while ${end.kind} was due`;
  }
}

/** What in a script does not fit its tree: a slip of the pen would else count as healthy. */
export function slipsOf(script: Script, fitted: Tree): readonly string[] {
  const { checks, causes, complaint } = fitted;
  const unknown = script.causes.filter((cause) => !Object.hasOwn(causes, cause));
  const listed = script.causes.filter((cause) => Object.hasOwn(causes, cause));
  const named = Object.entries(script.shows).flatMap(([check, shows]) =>
    causesIn(shows)
      .filter((cause) => !script.causes.includes(cause))
      .map((cause) => `"${check}" names "${cause}", which the vehicle has not`),
  );
  const branches = Object.entries(script.on).flatMap(([block, places]) =>
    Object.entries(places)
      .filter(([, branch]) => fitted.written?.branches?.[block]?.of[branch] === undefined)
      .map(([cause, branch]) => `"${cause}" is on "${branch}", which "${block}" has not`),
  );
  const answers = [...Object.keys(script.shows), ...Object.keys(script.sound), ...script.never];
  return [
    ...(script.end === 'unlisted' ? listed : unknown).map((cause) =>
      script.end === 'unlisted' ? `"${cause}" is listed` : `the tree has no cause "${cause}"`,
    ),
    ...named,
    ...branches,
    ...answers
      .filter((check) => !Object.hasOwn(checks, check))
      .map((check) => `the tree has no check "${check}" on this vehicle`),
    ...(Object.hasOwn(script.shows, complaint.confirm)
      ? []
      : [`"shows" must say what the complaint's test shows: "${complaint.confirm}"`]),
  ];
}

function causesIn(shows: Shows): readonly string[] {
  if (typeof shows === 'string') return [];
  if (!isWhile(shows)) return Object.keys(shows);
  return [
    ...[shows.while].flat(),
    ...causesIn(shows.then),
    ...(shows.else === undefined ? [] : causesIn(shows.else)),
  ];
}
