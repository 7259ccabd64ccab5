import { treeChart } from '../../core/drawing/tree-chart.ts';
import { treePage } from '../../core/drawing/tree-page.ts';
import { treeSvg } from '../../core/drawing/tree-svg.ts';
import { cleanRow } from '../../core/text.ts';
import { done, type Ended, type Io } from '../io.ts';
import { openTree } from '../library.ts';
import { wrongUse, type Given } from '../options.ts';

/** `droplight trees draw TREE [--as text|svg|mermaid]`: the walk and the feed as a page of text, or the walk drawn. */
export function drawTree(io: Io, given: Given, [id]: readonly string[]): Ended {
  const form = given.text('as') ?? 'text';
  if (id === undefined || !['text', 'svg', 'mermaid'].includes(form))
    return wrongUse(
      'A drawing wants one tree, as text, svg or mermaid.',
      'droplight trees draw TREE [--as text|svg|mermaid]',
    );
  const opened = openTree(io, given, id);
  if (opened.kind === 'bad') return opened;
  const { tree } = opened.value;
  if (form === 'svg') io.out(treeSvg(tree));
  else if (form === 'mermaid') io.out(treeChart(tree));
  else io.out(`${treePage(tree).map(cleanRow).join('\n')}\n`);
  return done;
}
