import { at } from '../../at.ts';
import { sum } from '../../sum.ts';
import { unlisted, type Check, type Tree } from '../model.ts';
import { settle } from '../written/settle.ts';
import { Written } from '../written/written.ts';
import type { Draft, Lead, Way } from './draft.ts';
import { fileOfDraft } from './file.ts';

/** A share of the vehicles that come by above which a result condemns. */
const enough = 0.8;
/** The same where no later check could show the cause again. */
const even = 0.5;
/** A share of them for which a later check is still worth while. */
const worthChecking = 0.05;

/** How many vehicles of each cause alone come to a place, by cause. */
type Coming = ReadonlyMap<string, number>;

/**
 * Where each result leads, as far as one cause at a time can say it: the checks in the order in
 * which they were told; a result that leaves one cause standing condemns it, any other goes to the
 * next check that can show a cause still there.
 */
export function offeredWay(draft: Draft): Way {
  const tree = settle(Written.parse(fileOfDraft(draft, 'draft')), {});
  const ids = draft.checks.map(({ id }) => id);
  const coming = new Map<string, Coming>();
  const [start] = ids;
  if (start !== undefined) coming.set(start, new Map(allCauses(tree)));
  const way: Record<string, Record<string, Lead>> = {};
  for (const [index, id] of ids.entries()) {
    const check = tree.checks[id];
    if (check === undefined) continue;
    const later = ids.slice(index + 1);
    const here = coming.get(id) ?? new Map();
    way[id] = {};
    for (const [result, { id: name }] of check.results.entries()) {
      const left = shownBy(check, result, here);
      const lead = leadFor(tree, left, later);
      way[id][name] = lead;
      if (lead.to === 'check') coming.set(lead.id, added(coming.get(lead.id), left));
    }
  }
  return { ...way, ...testWay(draft, start) };
}

const allCauses = (tree: Tree): readonly (readonly [string, number])[] => [
  ...Object.entries(tree.causes).map(([id, { odds }]) => [id, odds] as const),
  [unlisted, tree.unlisted],
];

const added = (one: Coming = new Map(), other: Coming): Coming =>
  new Map([...other].map(([id, weight]) => [id, weight + (one.get(id) ?? 0)]));

/** What is left of the vehicles that come to a check once it has shown a result. */
function shownBy({ background = [], points }: Check, result: number, here: Coming): Coming {
  return new Map(
    [...here].map(([id, weight]) => [id, weight * at(points[id] ?? background, result)]),
  );
}

function leadFor(tree: Tree, left: Coming, later: readonly string[]): Lead {
  const total = sum([...left.values()]);
  const [best, weight] = [...left].reduce(
    (one, other) => (other[1] > one[1] ? other : one),
    [unlisted, 0],
  );
  const shown = later.some((id) => Object.hasOwn(tree.checks[id]?.points ?? {}, best));
  if (best !== unlisted && weight > (shown ? enough : even) * total)
    return { to: 'cause', id: best };
  const standing = [...left].filter(([id, one]) => id !== unlisted && one > worthChecking * total);
  const next = later.find((id) => tellsApart(tree.checks[id], [...standing, [unlisted, 0]]));
  if (next !== undefined) return { to: 'check', id: next };
  const [last] = standing.toSorted((one, other) => other[1] - one[1]);
  if (last !== undefined && last[1] > even * total) return { to: 'cause', id: last[0] };
  return {
    to: 'stop',
    reason: 'Nothing on this list is shown: look at the complaint again, and add what you find.',
  };
}

/** Whether a check shows one of these causes otherwise than another. */
function tellsApart(check: Check | undefined, causes: readonly (readonly [string, number])[]) {
  const rows = causes.map(([id]) => check?.points[id] ?? check?.background);
  return rows.some((row) =>
    row?.some((chance, at) => Math.abs(chance - (rows[0]?.[at] ?? 0)) > 0.1),
  );
}

/** The complaint's own test: nothing to look for where it is sound, else the first check. */
function testWay({ test }: Draft, start: string | undefined): Way {
  if (test === undefined || start === undefined) return {};
  const leads = test.results.map(({ id }, index): [string, Lead] => [
    id,
    index === 0
      ? { to: 'stop', reason: 'It works now: ask when it did not, and try it then.' }
      : { to: 'check', id: start },
  ]);
  return { [test.id]: Object.fromEntries(leads) };
}
