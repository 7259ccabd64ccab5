import { keyName } from '../app/keys/keymap.ts';
import type { Binding, Mode } from '../app/keys/command.ts';
import { bindings } from '../app/pages/table.ts';
import { besides, helpWidth } from './calls.ts';
import { folded } from '../core/drawing/tree-page.ts';

const lineOf = ({ keys, about }: Binding): string =>
  besides(`  ${keys.map(keyName).join(' ')}`, 20, about);

/** The keys of each screen by themselves, out of the keymap; screens with the same keys stand together. */
function byScreen(): ReadonlyMap<string, readonly Mode[]> {
  const own = bindings.filter(({ modes }) => modes !== 'all');
  const modes = new Set(own.flatMap((one) => (one.modes === 'all' ? [] : one.modes)));
  const together = new Map<string, Mode[]>();
  for (const mode of modes) {
    const lines = own.filter((one) => one.modes.includes(mode)).map(lineOf);
    const text = [...new Set(lines)].join('\n');
    together.set(text, [...(together.get(text) ?? []), mode]);
  }
  return together;
}

const headOf = (modes: readonly Mode[]): string =>
  folded(modes.map((mode) => mode.replaceAll('-', ' ')).join(', '), helpWidth).join('\n');

/** `droplight help keys`: what every key does on every screen, from the table the screens read. */
export function allKeys(): string {
  const everywhere = bindings.filter(({ modes }) => modes === 'all').map(lineOf);
  const screens = [...byScreen()].map(([lines, modes]) => `${headOf(modes)}\n${lines}\n`);
  return [`on every screen\n${everywhere.join('\n')}\n`, ...screens].join('\n');
}
