import { open } from '../../src/commands/open.ts';
import { runCommand, scratch } from './commands.ts';

export const begin = [
  'no-supply',
  '--vehicle',
  'Orchard van',
  '--altitude',
  '5200ft',
  '--temperature',
  '70F',
];

/** A new session in a folder of its own; returns both. */
export async function begun() {
  const folder = scratch();
  const { out } = await runCommand(open, begin, { folder });
  return { folder, path: out.trim() };
}

export const said = (...actions: readonly object[]) =>
  actions.map((action) => JSON.stringify(action));
export const answers = (
  out: string,
): readonly { ok: boolean; n?: number; problem?: { code: string } }[] =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { ok: boolean });
