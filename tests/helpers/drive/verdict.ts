import { triageOfCause } from '../../../src/core/session/triage.ts';
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
  { mended, condemned, trees }: Drive,
): readonly string[] =>
  [
    ...mended,
    ...condemned.filter((cause) => trees.some((tree) => triageOfCause(tree, cause) !== undefined)),
  ].filter(
    (cause) =>
      !script.causes.includes(cause) &&
      !trees.some(({ causes }) => causes[cause]?.repair.try === true) &&
      // Another tree goes on from it: nothing was mended or handed on by its name.
      !trees.some(({ causes }) => causes[cause]?.tree !== undefined),
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
    ...strayed(script, done),
    ...askedAgain(done),
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

/** Where it was led on to other trees than the script says. */
function strayed({ tree, onto, end }: Script, { trees }: Drive): readonly string[] {
  const [walked, wanted] = [trees.map(({ id }) => id), [tree, ...onto]];
  const same = wanted.every((id, index) => walked[index] === id);
  return same || typeof end !== 'string' ? [] : [`it was led by ${walked.join(', ')} alone`];
}

/** What one tree had asked, and the one it led on to asks again with nothing mended between. */
const askedAgain = ({ steps, trees }: Drive): readonly string[] =>
  steps.flatMap(({ do: kind, id, leg, shown }, index) => {
    if (kind !== 'check' || shown === 'cannot tell') return [];
    const before = steps.slice(0, index);
    const since = before.slice(before.findLastIndex((one) => one.do === 'repair') + 1);
    const twice = since.some(
      (one) => one.id === id && one.leg < leg && one.shown !== 'cannot tell',
    );
    return twice ? [`"${id}" is asked again by the tree ${trees[leg]?.id}`] : [];
  });

/** Steps before the first repair that nobody may take on this vehicle; its complaint was met before. */
function forbidden(
  { never, neverWith: before }: Script,
  { steps, trees }: Drive,
): readonly string[] {
  const repair = steps.findIndex((step) => step.do === 'repair');
  return steps
    .slice(0, repair < 0 ? steps.length : repair)
    .filter(({ id, leg }) => {
      const tree = trees[leg];
      if (tree === undefined || id === tree.complaint.confirm) return false;
      const { checks, complaint } = tree;
      const safeguards = before && [{ before, check: complaint.confirm, shows: [], else: '' }];
      const wary: Tree = { ...tree, safeguards };
      return never.includes(id) || gatesOfStanding(wary, checks[id]?.standing ?? {}).length > 0;
    })
    .map(({ id }) => `"${id}" may not be asked of this vehicle`);
}

const boughtFor = ({ mended, trees }: Drive): readonly string[] =>
  mended.filter((cause) => {
    const known = trees.find(({ causes }) => Object.hasOwn(causes, cause));
    const { part, parts = [] } = known?.causes[cause]?.repair ?? {};
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
export function slipsOf(script: Script, ...fitted: readonly [Tree, ...Tree[]]): readonly string[] {
  const checks = Object.assign({}, ...fitted.map((tree) => tree.checks)) as Tree['checks'];
  const causes = Object.assign({}, ...fitted.map((tree) => tree.causes)) as Tree['causes'];
  const unknown = script.causes.filter((cause) => !Object.hasOwn(causes, cause));
  const listed = script.causes.filter((cause) => Object.hasOwn(causes, cause));
  const named = Object.entries(script.shows).flatMap(([check, shows]) =>
    causesIn(shows)
      .filter((cause) => !script.causes.includes(cause))
      .map((cause) => `"${check}" names "${cause}", which the vehicle has not`),
  );
  const branches = Object.entries(script.on).flatMap(([block, places]) =>
    Object.entries(places)
      .filter(([, branch]) =>
        fitted.every(({ written }) => written?.branches?.[block]?.of[branch] === undefined),
      )
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
    ...[...new Set(fitted.map(({ complaint }) => complaint.confirm))]
      .filter((confirm) => !Object.hasOwn(script.shows, confirm))
      .map((confirm) => `"shows" must say what the complaint's test shows: "${confirm}"`),
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
