import { treeChart, treePageSvg } from '../../core/drawing/tree-page-forms.ts';
import { treePage } from '../../core/drawing/tree-page.ts';
import { bad } from '../../core/problem.ts';
import { cleanRow } from '../../core/text.ts';
import { done, type Ended, type Io } from '../io.ts';
import { openLibrary, treeNamed } from '../library.ts';
import { type Given } from '../options.ts';

/** `droplight trees draw TREE [--as text|svg|mermaid]`: the walk and the feed as one page. */
export function drawTree(io: Io, given: Given, [id]: readonly string[]): Ended {
  const form = given.text('as') ?? 'text';
  if (id === undefined || !['text', 'svg', 'mermaid'].includes(form))
    return bad({
      code: 'wrong-use',
      message: 'A drawing wants one tree, as text, svg or mermaid.',
      mend: 'Use: droplight trees draw TREE [--as text|svg|mermaid]',
    });
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const tree = treeNamed(id, library.value);
  if (tree.kind === 'bad') return tree;
  if (form === 'svg') io.out(treePageSvg(tree.value));
  else if (form === 'mermaid') io.out(treeChart(tree.value));
  else io.out(`${treePage(tree.value).map(cleanRow).join('\n')}\n`);
  return done;
}
