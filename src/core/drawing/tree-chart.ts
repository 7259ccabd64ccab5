import { parseNext } from '../tree/way/next.ts';
import type { Tree } from '../tree/model.ts';
import { mermaidLabel } from './mermaid.ts';
import { ifWords, wayOrder } from './tree-page.ts';

/** The walk as a Mermaid flow chart. */
export function treeChart(tree: Tree): string {
  const order = wayOrder(tree);
  const name = (id: string): string => `c${order.indexOf(id)}`;
  const causes = Object.keys(tree.causes);
  const edges = order.flatMap((id) =>
    arrowsOf(tree, id).map(({ result, lead, label }) => {
      const to =
        lead.kind === 'check'
          ? name(lead.check)
          : lead.kind === 'cause'
            ? `r${causes.indexOf(lead.cause)}`
            : lead.kind === 'tree'
              ? `t${lead.tree.replaceAll('-', '_')}[${mermaidLabel(`another complaint: ${lead.tree}`)}]`
              : `s${order.indexOf(id)}_${result.id.replaceAll('-', '_')}([${mermaidLabel(result.reason ?? 'stop')}])`;
      return `  ${name(id)} -->|${mermaidLabel(label)}| ${to}`;
    }),
  );
  return [
    'flowchart TD',
    ...order.map((id) => `  ${name(id)}[${mermaidLabel(tree.checks[id]?.ask ?? id)}]`),
    ...causes.map((id, index) => `  r${index}{{${mermaidLabel(tree.causes[id]?.name ?? id)}}}`),
    ...edges,
    '',
  ].join('\n');
}

/** Every place that the results of a check may lead to, each with what the arrow says. */
const arrowsOf = (tree: Tree, id: string) =>
  (tree.checks[id]?.results ?? []).flatMap((result) => [
    ...(result.leads ?? []).map((lead) => ({
      result,
      lead: parseNext(lead.go),
      label: `${result.label}, where ${ifWords(tree, lead)}`,
    })),
    ...(result.next === undefined
      ? []
      : [{ result, lead: parseNext(result.next), label: result.label }]),
  ]);
