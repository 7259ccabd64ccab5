import type { Tell } from '../../problem.ts';
import type { When } from '../basics.ts';
import { fitTree } from '../fit.ts';
import type { Facts } from '../facts.ts';
import type { Tree } from '../model.ts';

/** More combinations than this are not looked through. */
const mostCombinations = 512;

/**
 * Causes that no check can show on some of the vehicles that have them: `when` has left out the checks
 * that would. Each is told once, for the first such vehicle.
 */
export function lintByFacts(tree: Tree, tell: Tell): void {
  const told = new Set(Object.keys(tree.causes).filter((cause) => !isShown(tree, cause)));
  for (const facts of combinations(tree)) {
    const fitted = fitTree(tree, facts);
    for (const [id, { name }] of Object.entries(fitted.causes)) {
      if (told.has(id) || isShown(fitted, id)) continue;
      told.add(id);
      tell({
        code: 'cause-unseen',
        path: `causes.${id}.when`,
        value: shown(facts),
        message: `On a vehicle with ${shown(facts)} no check can show "${name}".`,
        mend: 'Let a check that shows it exist there too, or take the cause out there.',
      });
    }
  }
}

/** Whether any check but the complaint's own has a row for this cause, or reads the path it sits on. */
function isShown({ causes, checks, complaint }: Tree, cause: string): boolean {
  const isOnPath = causes[cause]?.fault !== undefined;
  return Object.entries(checks).some(
    ([id, { points, feed }]) =>
      id !== complaint.confirm &&
      (Object.hasOwn(points, cause) || (feed !== undefined && isOnPath)),
  );
}

const shown = (facts: Facts): string =>
  Object.entries(facts)
    .map(([fact, value]) => `${fact} ${value}`)
    .join(', ');

/** Every combination of the values that the tree's conditions name. */
function combinations({ causes, checks }: Tree): readonly Facts[] {
  const values = new Map<string, Set<string>>();
  const note = (when: When | undefined): void => {
    for (const [fact, wanted] of Object.entries(when ?? {}))
      for (const value of [wanted].flat())
        values.set(fact, (values.get(fact) ?? new Set<string>()).add(value));
  };
  for (const { when } of Object.values(causes)) note(when);
  for (const { when } of Object.values(checks)) note(when);
  let all: readonly Facts[] = [{}];
  for (const [fact, named] of values) {
    if (all.length * named.size > mostCombinations) break;
    all = all.flatMap((facts) => [...named].map((value) => ({ ...facts, [fact]: value })));
  }
  return all;
}
