import type { KeyPress } from '../keys/command.ts';
import { moved } from '../keys/cursor.ts';
import type { MendedField, PartField, PhotoField } from '../screen.ts';
import { edited, edits } from './edit.ts';
import type { Typing } from './typing.ts';

/** Pages of the walk with several fields, each with its fields in the order of the page. */
export const forms: {
  readonly mended: readonly MendedField[];
  readonly photo: readonly PhotoField[];
  readonly 'part-off': readonly PartField[];
} = {
  mended: ['did', 'minutes', 'parts', 'cost'],
  photo: ['path', 'caption'],
  'part-off': ['part', 'where', 'fasteners', 'routing', 'bag'],
};

export type FormKind = keyof typeof forms;

/** The name of the field that has the cursor. */
export function fieldAt<K extends FormKind>(kind: K, at: number): (typeof forms)[K][number] {
  const field = forms[kind][at];
  if (field === undefined) throw new Error('the cursor stands in a field of its form');
  return field;
}

type Form<Field extends string> = {
  readonly at: number;
  readonly fields: Readonly<Record<Field, Typing>>;
};

/** What a key in a form comes to. */
export type Pressed<Field extends string> =
  | { readonly kind: 'left' }
  /** Enter after the last field: what was typed is to be kept. */
  | { readonly kind: 'done' }
  | { readonly kind: 'open'; readonly form: Form<Field> };

/** A key in a form: Enter goes on to the next field, and is done after the last. */
export function inForm<Field extends string>(
  { at, fields }: Form<Field>,
  order: readonly Field[],
  press: KeyPress,
): Pressed<Field> {
  const field = order[at];
  if (field === undefined) throw new Error('the cursor stands in a field of its form');
  if (press.command === 'go-back' || press.command === 'leave-field') return { kind: 'left' };
  if (edits(press.command))
    return {
      kind: 'open',
      form: { at, fields: { ...fields, [field]: edited(fields[field], press) } },
    };
  if (press.command === 'choose' && at === order.length - 1) return { kind: 'done' };
  const command = press.command === 'choose' ? 'down' : press.command;
  return { kind: 'open', form: { at: moved(at, command, order.length), fields } };
}
