import type { Binding, Command, Mode } from './command.ts';
import { fieldBindings } from './field.ts';
import { pageBindings } from './page.ts';
import { isDigit, isLetter, isTyped, type Token } from './tokens.ts';
import { hintElsewhere, practiceBindings } from './practice.ts';
import { walkBindings } from './walk.ts';

/**
 * All keys, in the order in which the foot line shows them. The first that fits counts.
 * @param own the keys that screens bring themselves
 */
export const bindingsWith = (own: readonly Binding[]): readonly Binding[] => [
  ...fieldBindings,
  ...practiceBindings,
  ...walkBindings,
  ...own,
  ...pageBindings,
  hintElsewhere,
];

/** The command a key means in a mode; undefined when it means nothing there. */
export function commandFor(
  bindings: readonly Binding[],
  mode: Mode,
  token: Token,
): Command | undefined {
  return bindingsOf(bindings, mode).find(({ keys }) => keys.some((key) => fits(key, token)))
    ?.command;
}

/** The keys that count in a mode. */
export const bindingsOf = (bindings: readonly Binding[], mode: Mode): readonly Binding[] =>
  bindings.filter(({ modes }) => modes === 'all' || modes.includes(mode));

function fits(key: string, token: Token): boolean {
  if (key === 'digit') return isDigit(token);
  if (key === 'letter') return isLetter(token);
  if (key === 'typed') return isTyped(token);
  return key === token;
}

const keyNames: Readonly<Record<string, string>> = {
  ' ': 'space',
  digit: '1-9',
  letter: 'letters',
  pgup: 'PgUp',
  pgdn: 'PgDn',
  home: 'Home',
  jobs: 'Past jobs',
  end: 'End',
  typed: 'any',
  back: 'backspace',
};

/** A key as it is called on the screen. */
export const keyName = (key: string): string =>
  keyNames[key] ??
  key.replace(
    /^C-(.+)$/,
    (_, name: string) => `Ctrl+${name.length === 1 ? name.toUpperCase() : name}`,
  );

/** The foot line of a mode: `enter keep   n note   ? keys`. */
export const hints = (
  bindings: readonly Binding[],
  mode: Mode,
): readonly { readonly key: string; readonly hint: string }[] =>
  bindingsOf(bindings, mode).flatMap(({ keys, hint }) =>
    hint !== undefined ? [{ key: keys[0] ?? '', hint }] : [],
  );
