import type { Mode } from '../walk/question.ts';
import type { Binding } from './binding.ts';
import { bindings } from './bindings.ts';
import type { Command } from './command.ts';
import { lineKeys } from './cursor.ts';
import { isDigit, isTyped, type Token } from './tokens.ts';

/** The command a key means in a mode; undefined when it means nothing there. */
export function commandFor(mode: Mode, token: Token): Command | undefined {
  return bindings.find(
    ({ modes, keys }) => counts(modes, mode) && keys.some((key) => fits(key, token)),
  )?.command;
}

const counts = (modes: Binding['modes'], mode: Mode): boolean =>
  modes === 'all' || modes.includes(mode);

function fits(key: string, token: Token): boolean {
  if (key === 'digit') return isDigit(token);
  if (key === 'line') return lineKeys.includes(token);
  if (key === 'typed') return isTyped(token);
  return key === token;
}

/** The foot line of a mode: `enter keep   n note   ? keys`. */
export const hints = (mode: Mode): readonly { readonly key: string; readonly hint: string }[] =>
  bindings.flatMap(({ modes, keys, hint }) =>
    hint !== undefined && counts(modes, mode) ? [{ key: keys[0] ?? '', hint }] : [],
  );
