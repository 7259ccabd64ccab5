import type { Mode } from '../walk/question.ts';
import type { Command } from './command.ts';
import type { Token } from './tokens.ts';

/** A key as a screen gets it: what it asks for, and which key it was. */
export type KeyPress = { readonly command: Command; readonly token: Token; readonly mode: Mode };
