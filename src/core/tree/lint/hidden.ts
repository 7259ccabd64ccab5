import { at } from '../../at.ts';
import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';
import { causeRow, isCertain, typedRow } from '../written/chances.ts';
import { alternativesOf } from '../written/varying.ts';
import type { Certain, Shares } from '../written/written.ts';

/** A typed share that shrinks by more than this is not what the author meant. */
const worthAsking = 0.03;

/**
 * Shares that a check cannot show, because a result that is listed later shows on sound vehicles
 * and would hide them: the order of the results is asked for, since no sum can tell it.
 */
export function lintHidden({ written, checks }: Tree, tell: Tell): void {
  if (written === undefined) return;
  for (const [id, check] of Object.entries(written.checks)) {
    const background = checks[id]?.background;
    if (id === written.complaint.confirm || background === undefined) continue;
    for (const [cause, varied] of Object.entries(check['shows-with'] ?? {}))
      for (const { is } of alternativesOf<Certain | Shares>(varied)) {
        const results = check.results.map((result) => result.id);
        const hidden = isCertain(is) ? undefined : hiddenIn(is, results, background);
        if (hidden !== undefined)
          tell({
            code: 'result-hidden',
            path: `checks.${id}.shows-with.${cause}.${hidden.result}`,
            value: String(Math.round(100 * hidden.typed)),
            message: `Of 100 such vehicles ${Math.round(100 * hidden.typed)} should show "${hidden.result}", and ${Math.round(100 * hidden.sound)} of 100 sound ones show "${hidden.by}", which is listed later and hides it.`,
            mend: `With both there, is "${hidden.result}" what you see? Then list it after "${hidden.by}".`,
          });
      }
  }
}

type Hidden = {
  readonly result: string;
  readonly typed: number;
  readonly by: string;
  readonly sound: number;
};

/** The named share that loses most to a result listed later, where that is worth a question. */
function hiddenIn(
  shares: Shares,
  results: readonly string[],
  background: readonly number[],
): Hidden | undefined {
  const typed = typedRow(shares, results);
  const settled = causeRow(shares, results, background);
  const lost = results.map((_, index) => (index === 0 ? 0 : at(typed, index) - at(settled, index)));
  const worst = lost.indexOf(Math.max(...lost));
  if (at(lost, worst) < worthAsking) return undefined;
  const later = background.map((chance, index) => (index > worst ? chance : 0));
  const by = later.indexOf(Math.max(...later));
  return by <= worst
    ? undefined
    : {
        result: at(results, worst),
        typed: at(typed, worst),
        by: at(results, by),
        sound: at(background, by),
      };
}
