import type { ActionOf } from '../action.ts';
import { expectedNow } from '../expecting/expected.ts';
import type { Story } from '../story.ts';
import { checkOf, noSuchCheck } from './lookup.ts';
import { accept, refuse, refuseUnknown, type Ruling } from './ruling.ts';

/** Keeps what a check is expected to show; said once, it stands until the check is answered. */
export function expect({ check: id, result }: ActionOf<'expect'>, story: Story): Ruling {
  const check = checkOf(story, id);
  if (check === undefined) return noSuchCheck(story, id);
  const names = check.results.map((one) => one.id);
  if (!names.includes(result)) return refuseUnknown('result', result, names);
  return expectedNow(story, id) === undefined
    ? accept([{ kind: 'expected', check: id, result }])
    : refuse(
        'expected-already',
        'What you expect of this is kept already.',
        'Answer it, or take that back first.',
        id,
      );
}
