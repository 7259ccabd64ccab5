import type { Tell } from '../../problem.ts';
import { alternativesOf } from './varying.ts';
import type { Written } from './written.ts';

/** What is wrong with lists of values that facts choose from: the plain one comes last, and once. */
export function checkVaried({ causes, checks }: Written, tell: Tell): void {
  const look = (path: string, value: unknown): void => {
    const plain = alternativesOf<unknown>(value).flatMap(({ when }, index) =>
      when === undefined ? [index] : [],
    );
    const [first] = plain;
    if (
      value === undefined ||
      first === undefined ||
      first === alternativesOf<unknown>(value).length - 1
    )
      return;
    tell({
      code: 'plain-not-last',
      path,
      message: 'What stands behind a value without "when" is never reached.',
      mend: 'Put the value without "when" last, and only one.',
    });
  };
  for (const [id, { odds, repair }] of Object.entries(causes)) {
    look(`causes.${id}.odds`, odds);
    look(`causes.${id}.repair.minutes`, repair.minutes);
  }
  for (const [id, check] of Object.entries(checks)) {
    for (const key of ['how', 'healthy', 'minutes', 'limits', 'sound'] as const)
      look(`checks.${id}.${key}`, check[key]);
    for (const [cause, row] of Object.entries(check['shows-with'] ?? {}))
      look(`checks.${id}.shows-with.${cause}`, row);
  }
}
