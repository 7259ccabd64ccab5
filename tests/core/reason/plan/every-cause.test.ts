import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import type { Event } from '../../../../src/core/session/event.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { currentLeg, type Story } from '../../../../src/core/session/story.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';
import { headerFor, stampAt } from '../../../helpers/story.ts';

/*
 * A vehicle with exactly one cause, whose checks answer as they mostly do with it, and a mechanic
 * who follows the tree's own way: what the tree names is repaired and put to the proof, and as long
 * as that fails the way goes on.
 */

/** What becomes of it: named at once, after so many other repairs, or not at all. */
type End =
  | { readonly after: number; readonly named: readonly string[] }
  | { readonly lost: string };

const shop = shippedShop();
const mostSteps = 80;

function walk(tree: Tree, cause: string): End {
  const facts = Object.fromEntries(
    Object.entries(tree.causes[cause]?.when ?? {}).map(([fact, wanted]) => [
      fact,
      [wanted].flat()[0] ?? '',
    ]),
  );
  const header = headerFor(tree, shop, facts);
  let events: readonly Event[] = [];
  let story = fold(header, events);
  const named: string[] = [];
  const take = (action: Action): void => {
    const decision = decide(story, action, { tree: () => undefined });
    if (decision.kind === 'refused') throw new Error(`${tree.id}: ${decision.problem.message}`);
    const first = events.length + 1;
    events = [
      ...events,
      ...decision.payloads.map((payload, at) => ({
        n: first + at,
        ...stampAt(first + at),
        ...payload,
      })),
    ];
    story = fold(header, events);
  };
  for (let step = 0; step < mostSteps; step += 1) {
    const now = story.due;
    if (now.kind === 'named' && now.cause === cause) return { after: named.length, named };
    if (now.kind === 'check')
      take({ do: 'find', check: now.check, result: shown(story, now.check, cause) });
    else if (now.kind === 'named') {
      named.push(now.cause);
      take({ do: 'repair', cause: now.cause });
    } else if (now.kind === 'proof')
      take({ do: 'prove', result: shown(story, currentLeg(story).tree.complaint.confirm, cause) });
    else if (isHandedOver(story, cause)) return { after: named.length, named };
    else return { lost: `${now.kind} after ${lastCheck(story)}` };
  }
  return { lost: 'the way does not end' };
}

const lastCheck = (story: Story): string => {
  const last = story.findings.at(-1);
  return `${last?.check}: ${last?.result}`;
};

/** Whether another tree goes on from the cause, and the check that led over there looks at it. */
function isHandedOver(story: Story, cause: string): boolean {
  const { tree } = currentLeg(story);
  const last = story.findings.at(-1);
  const looks = last && tree.checks[last.check]?.['looks-at']?.includes(cause);
  return looks === true && story.due.kind === 'leg' && story.due.tree === tree.causes[cause]?.tree;
}

/** The likeliest result of a check with this cause alone. */
function shown(story: Story, id: string, cause: string): string {
  const { tree } = currentLeg(story);
  const check = tree.checks[id];
  const row = check?.points[cause] ?? check?.background;
  const place = row === undefined ? -1 : row.indexOf(Math.max(...row));
  return check?.results.at(place)?.id ?? '';
}
/** Causes that the way does not come to, and where it stops instead: each for a reason. */
const exceptions: Readonly<Record<string, string>> = {
  // The vehicle passes its own test: there is nothing to condemn, and the stop says what to do.
  'high-co test-fault': 'stop after co-hc-read: good',
  // Worn evenly it shows little outside: the stop names the long check that is left, to be chosen.
  'rough-idle rings': 'stop after plug-read: same',
};

const all = shippedTrees().flatMap((tree) =>
  Object.keys(tree.causes).map((cause) => ({ name: `${tree.id} ${cause}`, tree, cause })),
);

test.each(all)(
  'the own way of a tree names the cause that is there: $name',
  ({ name, tree, cause }) => {
    const lost = exceptions[name];

    expect(walk(tree, cause)).toEqual(lost === undefined ? { after: 0, named: [] } : { lost });
  },
);

test('every exception is a cause of a tree', () => {
  const names = new Set(all.map(({ name }) => name));

  expect(Object.keys(exceptions).filter((name) => !names.has(name))).toEqual([]);
});
