import { wallMermaid, wallSvg } from '../../core/drawing/tree-page-forms.ts';
import { wallLines } from '../../core/drawing/tree-page.ts';
import { cleanRow } from '../../core/text.ts';
import { fail, type ExitCode, type Io } from '../io.ts';
import { openLibrary } from '../library.ts';
import { treeNamed } from '../open.ts';
import { firstOf, type Given } from '../options.ts';

/** `droplight trees draw TREE [--as text|svg|mermaid]`: the walk and the feed as one page. */
export function drawTree(io: Io, given: Given, [id]: readonly string[]): ExitCode {
  const form = given.text('as') ?? 'text';
  if (id === undefined || !['text', 'svg', 'mermaid'].includes(form))
    return fail(io, {
      code: 'wrong-use',
      message: 'A drawing wants one tree, as text, svg or mermaid.',
      mend: 'Use: droplight trees draw TREE [--as text|svg|mermaid]',
    });
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return fail(io, firstOf(library.problems));
  const tree = treeNamed(id, library.value);
  if (tree.kind === 'bad') return fail(io, firstOf(tree.problems));
  if (form === 'svg') io.out(wallSvg(tree.value));
  else if (form === 'mermaid') io.out(wallMermaid(tree.value));
  else io.out(`${wallLines(tree.value).map(cleanRow).join('\n')}\n`);
  return 0;
}
