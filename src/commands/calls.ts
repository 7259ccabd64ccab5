import { screenUses, uses, type Use } from './uses.ts';

/** Every word that calls something, with how it is called. */
export const everyUse: Readonly<Record<string, Use>> = { ...screenUses, ...uses };

/** Signs to a line of help. */
const width = 100;
/** A call folded to the width; what goes on is set in below its words. */
function folded(use: string): readonly string[] {
  const lines = [`droplight ${use.split(' ')[0] ?? ''}`];
  const parts = use.match(/\[[^\]]*\](?:\.\.\.)?|\([^)]*\)|--\S+ [A-Z]+|\S+/g) ?? [];
  for (const part of parts.slice(1)) {
    const last = lines.at(-1) ?? '';
    if (`${last} ${part}`.length <= width) lines[lines.length - 1] = `${last} ${part}`;
    else lines.push(`        ${part}`);
  }
  return lines;
}

/** A call with all its options and what it does, and an example of it where that is asked for. */
export const entryOf = (
  { use, does, example }: Use,
  { example: withExample = false }: { readonly example?: boolean } = {},
): string =>
  [...folded(use), `    ${does}`, ...(withExample ? [`    For example: ${example}`] : []), ''].join(
    '\n',
  );
