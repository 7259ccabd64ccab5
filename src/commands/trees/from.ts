import { bad } from '../../core/problem.ts';
import { treeOf } from '../../core/review/tree-of.ts';
import { fold } from '../../core/session/fold.ts';
import { printTree } from '../../core/tree/written/print.ts';
import { done, type Ended, type Io } from '../io.ts';
import type { Given } from '../options.ts';
import { withSession } from '../session.ts';

/** `droplight trees from SESSION`: a job without a tree as a tree for a mentor to finish, printed. */
export function treeFrom(io: Io, given: Given, words: readonly string[]): Ended | Promise<Ended> {
  const folder = given.text('sessions');
  const args = [...words, ...(folder === undefined ? [] : ['--sessions', folder])];
  return withSession(io, args, { use: 'trees from SESSION', options: {} }, ({ recovered }) => {
    const tree = treeOf(fold(recovered.header, recovered.events));
    if (tree === undefined)
      return bad({
        code: 'had-a-tree',
        message: 'Every complaint of this job had a tree.',
        mend: 'Name a session that was begun in own words.',
      });
    io.out(printTree(tree));
    return done;
  });
}
