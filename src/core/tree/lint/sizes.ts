import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';

/** Beyond these a number or a list is a slip: minutes of seconds, steps of a whole chapter. */
const most = { check: 600, repair: 3000, title: 60, how: 12, do: 30 } as const;

/** Minutes, titles and lists of steps that no check or repair has. */
export function lintSizes(tree: Tree, tell: Tell): void {
  const beyond = (path: string, amount: number, limit: number, what: string): void => {
    if (amount > limit)
      tell({
        code: 'size-beyond',
        path,
        value: String(amount),
        message: `${amount} ${what}; more than ${limit} is hardly meant.`,
        mend: 'Mend the number, or say it in less.',
      });
  };
  beyond('title', tree.title.length, most.title, 'characters');
  for (const [id, { minutes, how }] of Object.entries(tree.checks)) {
    if (minutes === 0)
      tell({
        code: 'no-minutes',
        path: `checks.${id}.minutes`,
        value: '0',
        message: 'A check that takes no time would always be advised first.',
        mend: 'Give the minutes with the hands on it; a glance is 1.',
      });
    beyond(`checks.${id}.minutes`, minutes, most.check, 'minutes');
    beyond(`checks.${id}.how`, how.length, most.how, 'steps');
  }
  for (const [id, { repair }] of Object.entries(tree.causes)) {
    beyond(`causes.${id}.repair.minutes`, repair.minutes, most.repair, 'minutes');
    beyond(`causes.${id}.repair.do`, repair.do.length, most.do, 'steps');
  }
}
