import type { Group } from '../groups.ts';
import { idFor } from '../writing/names.ts';
import { madeCheck } from './made-check.ts';
import type { Check, Tree } from '../model.ts';

const prefix = 'own-';

/** Whether a tree is none of a library: it was begun from words, and grows by what is named. */
export const isOwn = ({ id }: Pick<Tree, 'id'>): boolean => id.startsWith(prefix);

/** The results of a check in own words, healthiest first; the complaint's own test has no middle. */
export const ownResults = { good: 'good', neither: 'neither', bad: 'bad' } as const;

/** The complaint's own test as long as nobody has said how the complaint is made to happen. */
const unnamedTest: Check = madeCheck({
  kind: 'try',
  ask: 'Make it happen: does the complaint show?',
  results: [
    { id: ownResults.good, label: 'it does not show' },
    { id: ownResults.bad, label: 'it shows' },
  ],
});

/**
 * A tree for a complaint that no tree is about: the words it was told in and its own test, nothing
 * else. It has no cause and no odds, so that nothing can be claimed of it.
 * @param group what it is about, where that was said: the library's checks of the group fit it
 * @param taken ids of other trees of the same job
 */
export function bareTree(words: string, group?: Group, taken: readonly string[] = []): Tree {
  const say = words.trim();
  const bare = taken.map((id) => (isOwn({ id }) ? id.slice(prefix.length) : id));
  const id = `${prefix}${idFor(say, bare)}`;
  const test = `${id}-test`;
  return {
    format: 2,
    id,
    title: say.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase()).replace(/\.$/, ''),
    ...(group !== undefined && { group }),
    complaint: { say, confirm: test, tries: 1 },
    fits: [],
    start: test,
    baseline: [],
    alsoLikely: 0,
    unlisted: 0,
    causes: {},
    checks: { [test]: unnamedTest },
  };
}

/** A tree that was begun from words, with those words changed; any other as it is. */
export const withWords = <T extends Pick<Tree, 'id' | 'title'> & { complaint: { say: string } }>(
  tree: T,
  change: (text: string) => string,
): T =>
  isOwn(tree)
    ? {
        ...tree,
        title: change(tree.title),
        complaint: { ...tree.complaint, say: change(tree.complaint.say) },
      }
    : tree;

/** Whether somebody has said how the complaint is made to happen: what was named has words of its own. */
export const isTestNamed = ({ checks, complaint: { confirm } }: Tree): boolean =>
  checks[confirm]?.told !== undefined;
