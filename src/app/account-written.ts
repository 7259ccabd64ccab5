import { withoutFolder } from './wording.ts';
import type { Message } from './message.ts';

/** Where an account was written, and which of its parts stay as somebody edited them. */
export function accountWritten({
  path,
  kept,
}: Extract<Message, { kind: 'account-written' }>): string {
  const edited = kept.length === 0 ? '' : `; kept as edited: ${kept.join(', ')}`;
  return `Account written: ${withoutFolder(path)}${edited}`;
}
