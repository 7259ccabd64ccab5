import { at } from '../../at.ts';
/** No cause is taken as nearly certain before anything was looked at. */
const greatestPrior = 0.95;

/** Share of the odds where "no second cause" is asked for: small enough to be none. */
const leastScale = 1e-10;
const halvings = 200;

export type Showing = {
  /** Share on any scale, above zero. */
  readonly odds: number;
  /** Chance that this cause alone shows the complaint. */
  readonly shows: number;
};

const priorOf = (cause: Showing, scale: number, total: number): number =>
  Math.min(greatestPrior, (scale * cause.odds) / total);

/** P(two or more present | the complaint is there); only sums of positive terms. */
export function chanceOfSeveral(causes: readonly Showing[], priors: readonly number[]): number {
  let none = 1;
  let oneSilent = 0;
  let oneShowing = 0;
  let moreSilent = 0;
  let moreShowing = 0;
  causes.forEach((cause, index) => {
    const prior = at(priors, index);
    const silent = prior * (1 - cause.shows);
    const showing = prior * cause.shows;
    moreShowing += silent * oneShowing + showing * (oneSilent + oneShowing + moreSilent);
    moreSilent = moreSilent * (1 - showing) + silent * oneSilent;
    oneShowing = oneShowing * (1 - prior) + showing * none;
    oneSilent = oneSilent * (1 - prior) + silent * none;
    none *= 1 - prior;
  });
  const complaint = oneShowing + moreShowing;
  return complaint > 0 ? moreShowing / complaint : 0;
}

/**
 * Priors from odds: p = min(0.95, s·odds/total), with s halved down until the chance of a
 * second cause, given the complaint, is `alsoLikely`. Two sure causes of equal odds and
 * `alsoLikely` 0.2 give 1/3 each: p²/(1-(1-p)²) = p/(2-p).
 */
export function makePriors(causes: readonly Showing[], alsoLikely: number): readonly number[] {
  const total = causes.reduce((all, cause) => all + cause.odds, 0);
  const at = (scale: number) => causes.map((cause) => priorOf(cause, scale, total));
  let low = leastScale;
  let high = causes.reduce(
    (most, cause) => Math.max(most, (greatestPrior * total) / cause.odds),
    1,
  );
  for (let step = 0; step < halvings; step += 1) {
    const middle = (low + high) / 2;
    if (chanceOfSeveral(causes, at(middle)) < alsoLikely) low = middle;
    else high = middle;
  }
  return at(low);
}
