import { byTime, dateOf } from '../session/clock.ts';
import { heading, paragraph, type Block } from '../account/block.ts';
import type { Review } from './shape.ts';
import { minuteWords, sentence } from '../account/words/wording.ts';

/** How one person's sessions went, in their order of time. */
export type Trend = {
  readonly who: string;
  readonly sessions: readonly {
    readonly session: string;
    readonly opened: string;
    readonly used: number;
    readonly advised: number | undefined;
    /** Expected minutes of choices like these, as a multiple of the advised order's. */
    readonly ratio: number | undefined;
    readonly lost: number;
    readonly guesses: number;
    readonly toldNothing: number;
  }[];
};

/** One trend for each person with two sessions or more. */
export function trendsOf(reviews: readonly Review[]): readonly Trend[] {
  const people = [...new Set(reviews.map(({ who }) => who))];
  return people.flatMap((who) => {
    const own = reviews
      .filter((review) => review.who === who)
      .toSorted((one, other) => byTime(one.opened, other.opened));
    if (own.length < 2) return [];
    const sessions = own.map(({ session, opened, minutes, guesses, toldNothing }) => ({
      session,
      opened,
      used: minutes.used,
      advised: minutes.advised,
      ratio:
        minutes.advised === undefined || minutes.advised === 0
          ? undefined
          : (minutes.advised + minutes.lost) / minutes.advised,
      lost: minutes.lost,
      guesses,
      toldNothing,
    }));
    return [{ who, sessions }];
  });
}

export function trendBlocks(reviews: readonly Review[]): readonly Block[] {
  return trendsOf(reviews).flatMap(({ who, sessions }): readonly Block[] => [
    heading(who === '' ? 'The trend' : `The trend of ${who}`),
    {
      kind: 'table',
      head: ['Date', 'Minutes used', 'Advised order', 'Given away', 'Guesses', 'Told nothing'],
      rows: sessions.map((one) => [
        dateOf(one.opened),
        String(Math.round(one.used)),
        one.advised === undefined ? 'unknown' : String(Math.round(one.advised)),
        String(Math.round(one.lost)),
        String(one.guesses),
        String(one.toldNothing),
      ]),
    },
    paragraph(trendWords(sessions)),
  ]);
}

function trendWords(sessions: Trend['sessions']): string {
  const [first, last] = [sessions[0], sessions.at(-1)];
  if (first === undefined || last === undefined) return '';
  const guesses =
    first.guesses === last.guesses
      ? `guesses stayed at ${first.guesses}`
      : `guesses went from ${first.guesses} to ${last.guesses}`;
  const ratio =
    first.ratio === undefined || last.ratio === undefined
      ? `minutes given away went from ${minuteWords(first.lost)} to ${minuteWords(last.lost)}`
      : `choices cost ${first.ratio.toFixed(2)} times the advised order's minutes at first and ${last.ratio.toFixed(2)} times at last`;
  const better = last.lost < first.lost && last.guesses <= first.guesses;
  const few = sessions.length < 4 ? ' So few sessions show a direction, not a habit.' : '';
  return `${sentence(`From the first to the last of ${sessions.length} sessions, ${ratio}; ${guesses}`)}${better ? ' That is the right way.' : ''}${few}`;
}
