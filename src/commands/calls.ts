import { folded } from '../core/drawing/tree-page.ts';
import { screenUses, uses, type Use } from './uses.ts';

/** Every word that calls something, with how it is called. */
export const everyUse: Readonly<Record<string, Use>> = { ...screenUses, ...uses };

/** Signs to a line of help: what a terminal has at the least. */
export const helpWidth = 80;

/** A call folded to the width; what goes on is set in below its words. */
function foldedCall(use: string): readonly string[] {
  const lines = [`droplight ${use.split(' ')[0] ?? ''}`];
  const parts = use.match(/\[[^\]]*\](?:\.\.\.)?|\([^)]*\)|--\S+ [A-Z]+|\S+/g) ?? [];
  for (const part of parts.slice(1).flatMap(choices)) {
    const last = lines.at(-1) ?? '';
    if (`${last} ${part}`.length <= helpWidth) lines[lines.length - 1] = `${last} ${part}`;
    else lines.push(`        ${part}`);
  }
  return lines;
}

/** What is too long for a line is parted where one may choose. */
const choices = (part: string): readonly string[] =>
  part.length > helpWidth - 8 ? part.split(/(?<=\|) /) : [part];

/** A call with all its options and what it does, and an example of it where that is asked for. */
export const entryOf = (
  { use, does, example }: Use,
  { example: withExample = false }: { readonly example?: boolean } = {},
): string =>
  [
    ...foldedCall(use),
    ...folded(`    ${does}`, helpWidth, '    '),
    ...(withExample ? [`    For example: ${example}`] : []),
    '',
  ].join('\n');

/** A row of two columns: what is told is folded beside its head, from the same column on. */
export const besides = (head: string, column: number, told: string): string =>
  `${head.padEnd(column - 1)} ${folded(told, helpWidth - Math.max(column, head.length + 1)).join(`\n${' '.repeat(column)}`)}`;
