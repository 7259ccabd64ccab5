import type { Settings } from '../settings.ts';
import type { Repair } from '../tree/model.ts';

/** What one person weighs advice by, beside the minutes. */
export type Prudence = {
  /** What an hour of work is worth against the usual: at 2 a part counts for half its minutes. */
  readonly hour: number;
  /** Least chance at which a repair is advised while a short check could still tell. */
  readonly sure: number;
};

/** After the measurements on fifteen trees: a third of the wrong parts spared for 8 % more minutes. */
export const usualPrudence: Prudence = { hour: 1, sure: 0.8 };

// What a part is worth in minutes of work: common practice, no source.
const usualPrices = { none: 0, small: 20, dear: 90 } as const;
/** A repair of which the tree does not say what has to be bought: an hour, as measured. */
const untoldPrice = 60;

/** The price of what a repair has to buy, in minutes of work. */
export const partPrice = (part: Repair['part'], { hour }: Prudence): number =>
  (part === undefined ? untoldPrice : usualPrices[part]) / hour;

const hours: Readonly<Record<Settings['hour'], number>> = { half: 0.5, usual: 1, double: 2 };

/** What a person's settings say the advice is to be weighed by. */
export const prudenceOf = ({ hour, sure }: Pick<Settings, 'hour' | 'sure'>): Prudence => ({
  hour: hours[hour],
  sure: Number(sure) / 100,
});
