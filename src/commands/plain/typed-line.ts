import { blockStart } from '../../app/keys/cursor.ts';
import { isField, narrows } from '../../app/keys/field.ts';
import { bindingsOf, commandFor, keyName } from '../../app/keys/keymap.ts';
import type { Mode } from '../../app/keys/command.ts';
import { isLetter, isTyped, type Token } from '../../app/keys/tokens.ts';
import type { Message } from '../../app/message.ts';
import { bindings } from '../../app/pages/table.ts';
import { typedIn } from '../../app/typing/drafts.ts';
import { isEmpty } from '../../app/typing/typing.ts';
import type { Screen } from '../../app/screen.ts';
import type { State } from '../../app/state.ts';

/** What a line comes to: keys for the program as it stands, its question said again, or nothing it knows. */
export type Meant =
  | { readonly kind: 'struck'; readonly messages: readonly Message[] }
  /** A line of a list, by arrows; what is then struck counts only if there is such a line. */
  | {
      readonly kind: 'picked';
      readonly line: number;
      readonly moves: readonly Message[];
      readonly keys: readonly Message[];
    }
  /** What stands there is left first, and the line read again. */
  | { readonly kind: 'anew'; readonly messages: readonly Message[] }
  | { readonly kind: 'say-again' }
  | { readonly kind: 'say-ways' }
  | { readonly kind: 'unknown' };

const key = (token: Token): Message => ({ kind: 'key', token });
const struck = (...tokens: readonly Token[]): Meant => ({
  kind: 'struck',
  messages: tokens.map(key),
});

const anew = (...tokens: readonly Token[]): Meant => ({ kind: 'anew', messages: tokens.map(key) });

/** A key that has no letter, as a line spells it in a field too. */
function nameOf(word: string): Token | undefined {
  if (word === leaveLine) return 'esc';
  const control = /^ctrl\+(\w)$/i.exec(word)?.[1];
  return control === undefined ? undefined : `C-${control.toLowerCase()}`;
}

/** A reading that was refused stands in its field: whatever is typed now, it goes. */
const afterRefused = (word: string): Meant =>
  word === leaveLine ? struck('C-a', 'C-k') : anew('C-a', 'C-k');

/** The line that stands for Escape, in a field too. */
export const leaveLine = '.';
/** Before the number of a result where numbers are readings. */
export const resultMark = '#';

/** What a typed line means on the screen as it stands. */
export function meantBy(line: string, state: State): Meant {
  const { mode } = state.question;
  const word = line.trim();
  if (word === '') return emptyLine(state);
  if (word === '?') return { kind: 'say-ways' };
  if (mode === 'asked') return word === 'y' ? struck('y') : anew('esc');
  if (mode === 'reading') return afterRefused(word);
  const named = nameOf(word);
  if (named !== undefined) return struck(named);
  if (isField(mode)) return ofLibrary(word, state.screen) ?? retyped(line);
  return numbered(word, state) ?? answered(word, mode) ?? commanded(word, state);
}

/** An empty line goes on where nothing was typed, and else has the question said again: it records nothing. */
function emptyLine({ question: { mode }, screen }: State): Meant {
  if (mode === 'text' || mode === 'reading') {
    const typed = typedIn(screen);
    return typed === undefined || isEmpty(typed) ? struck('enter') : { kind: 'say-again' };
  }
  const goesOn = isField(mode) || mode === 'asked' || mode === 'insist' || mode === 'replay';
  return goesOn ? struck('enter') : { kind: 'say-again' };
}

/** A line is all that the field is to hold: it goes before what stands there, and that goes. */
const retyped = (line: string): Meant => ({
  kind: 'struck',
  messages: [...retypedAs(line), key('enter')],
});

const retypedAs = (text: string): readonly Message[] => [
  key('C-a'),
  { kind: 'pasted', text },
  key('C-k'),
];

/** Where a check is named: words with a `?` behind them look into the library, and a number takes what was found. */
function ofLibrary(word: string, screen: Screen): Meant | undefined {
  if (screen.kind !== 'own-check' || screen.form.at > 0) return undefined;
  const [, number] = /^#(\d)$/.exec(word) ?? [];
  if (number !== undefined) return picked(screen, Number(number) - 1, 'enter');
  return word.endsWith('?')
    ? { kind: 'struck', messages: retypedAs(word.slice(0, -1)) }
    : undefined;
}

/** Readings and values that are typed straight at the question. */
function answered(word: string, mode: Mode): Meant | undefined {
  const [first = '', ...rest] = Array.from(word);
  const reads = /^[-+.,\dO]/.test(word);
  const read = [
    key(first),
    ...(rest.length === 0 ? [] : [{ kind: 'pasted' as const, text: rest.join('') }]),
    key('enter'),
  ];
  if (mode === 'measure' && reads) return { kind: 'struck', messages: read };
  if (mode === 'insist' && reads) return { kind: 'struck', messages: [key('esc'), ...read] };
  if (mode === 'condition' && reads)
    return {
      kind: 'struck',
      messages: [key('enter'), { kind: 'pasted', text: word }, key('enter')],
    };
  return mode === 'replay' && /^[\d:]+$/.test(word)
    ? struck(...Array.from(word), 'enter')
    : undefined;
}

/** The number of a line, or of a result where numbers are readings. */
function numbered(word: string, { question: { mode }, screen }: State): Meant | undefined {
  const [, mark, digits] = /^(#?)(\d{1,3})$/.exec(word) ?? [];
  if (digits === undefined) return undefined;
  const line = Number(digits) - 1;
  if (line < 0) return undefined;
  if (mode === 'measure') return mark === resultMark ? picked(screen, line, 'enter') : undefined;
  if (mode === 'history') return picked(screen, line);
  // The key of a page of cautions is one digit; no longer number may stand for another page.
  if (mode === 'caution' || mode === 'cause-caution')
    return digits.length === 1 ? struck(digits) : undefined;
  return commandFor(bindings, mode, '1') === 'pick-line' ? listed(line, mode, screen) : undefined;
}

/** A line of a list, by its digit; one of another nine by the arrows first. */
function listed(line: number, mode: Mode, screen: Screen): Meant {
  const digit = String(line - blockStart(line) + 1);
  // A timer is started or stopped by Enter on its marked line.
  const keys = mode === 'timers' ? [digit, 'enter'] : [digit];
  return blockStart(cursorOn(screen)) === blockStart(line)
    ? struck(...keys)
    : picked(screen, line, ...keys);
}

/** Arrows from the line that is marked to another, and keys for that. */
function picked(screen: Screen, line: number, ...keys: readonly Token[]): Meant {
  const by = line - cursorOn(screen);
  const moves = Array.from({ length: Math.abs(by) }, () => key(by < 0 ? 'up' : 'down'));
  return { kind: 'picked', line, moves, keys: keys.map(key) };
}

/** The line that is marked; -1 for none. */
export function cursorOn(screen: Screen): number {
  if (screen.kind === 'start') return screen.form.cursor;
  if (screen.kind === 'walk') return screen.input.kind === 'ready' ? screen.input.cursor : -1;
  if (screen.kind === 'own-check' || screen.kind === 'own-cause') return screen.form.cursor;
  return 'cursor' in screen ? screen.cursor : -1;
}

/** A key by its letter, its name or the word of the line of keys; letters that narrow a list. */
function commanded(word: string, { question: { mode }, screen }: State): Meant {
  const token = tokenOf(word, mode);
  if (token !== undefined) return struck(token);
  const letters = Array.from(word).filter(isLetter);
  if (!narrows(mode) || letters.length === 0) return { kind: 'unknown' };
  return struck(...Array.from(soughtOn(screen), () => 'back'), ...letters);
}

function soughtOn(screen: Screen): string {
  if ('sought' in screen) return screen.sought;
  return screen.kind === 'start' ? screen.form.sought : '';
}

function tokenOf(word: string, mode: Mode): Token | undefined {
  // A word narrows the list there, whatever key is called so.
  if (narrows(mode)) return word.toLowerCase() === 'esc' ? 'esc' : undefined;
  const known = bindingsOf(bindings, mode);
  const keys = known.flatMap((binding) => binding.keys);
  if (keys.includes(word) && isTyped(word)) return word;
  const same = (name: string) => name.toLowerCase() === word.toLowerCase();
  return (
    keys.find((one) => !isTyped(one) && (same(one) || same(keyName(one)))) ??
    known.find(({ hint }) => hint !== undefined && same(hint))?.keys[0]
  );
}
