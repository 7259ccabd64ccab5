import type { Tell } from '../../problem.ts';
import { strayNext } from '../way/next.ts';
import { unknown, unknownAmong } from '../unknown.ts';
import type { Written, WrittenCheck } from './written.ts';

/** What is wrong with a list of places where a result may lead. */
export function checkLeads(
  tree: Written,
  { path, check, tell }: { path: string; check: WrittenCheck; tell: Tell },
): void {
  for (const [index, { next }] of check.results.entries()) {
    if (!Array.isArray(next)) continue;
    const at = `${path}.results[${index}].next`;
    const plain = next.findIndex((one) => typeof one === 'string');
    if (plain !== next.length - 1)
      tell({
        code: 'plain-not-last',
        path: at,
        message: 'The last place to go must be the one without a condition, and the only one.',
        mend: 'End the list with where the way goes when nothing else holds.',
      });
    for (const [place, one] of next.entries()) {
      const stray = strayNext(tree, typeof one === 'string' ? one : one.go);
      if (stray !== undefined) tell({ ...stray, path: `${at}[${place}]` });
      if (typeof one !== 'string' && 'if' in one) checkIf(tree, one.if, `${at}[${place}].if`, tell);
    }
  }
}

type If = Readonly<Record<string, readonly string[]>>;

function checkIf({ checks }: Written, asked: If, path: string, tell: Tell): void {
  for (const [check, results] of Object.entries(asked)) {
    const offered = checks[check]?.results.map(({ id }) => id);
    if (offered === undefined) tell(unknown('check', check, path, checks));
    else
      for (const result of results)
        if (!offered.includes(result))
          tell(unknownAmong('result', result, `${path}.${check}`, offered));
  }
}
