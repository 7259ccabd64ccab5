import { dateOf } from '../session/clock.ts';
import type { Decision } from './decision.ts';
import type { Expectations } from './expectations.ts';
import { peopleOf, type Person } from './people.ts';
import type { Review } from './shape.ts';

const whole = (minutes: number): number => Math.round(minutes);
const hundredths = (chance: number): number => Math.round(chance * 100) / 100;

/** A review as data: chances to the hundredth, minutes to the whole one. */
export const reviewJson = (review: Review) => {
  const { minutes, decisions, skills, people, expectations, ...rest } = review;
  const { comparison, ...told } = minutes;
  return {
    ...rest,
    minutes: {
      ...told,
      used: whole(told.used),
      comparison:
        comparison === undefined
          ? null
          : {
              causes: comparison.causes,
              advised: rounded(comparison.advised),
              own: rounded(comparison.own),
            },
    },
    skills: { ...skills, minutes: rounded(skills.minutes) },
    people: people.map((one) => ({
      ...one,
      skills: { ...one.skills, minutes: rounded(one.skills.minutes) },
      expectations: expectationJson(one.expectations),
    })),
    expectations: expectationJson(expectations),
    decisions: decisions.map(decisionJson),
  };
};

const rounded = <T extends Readonly<Record<string, number>>>(all: T) =>
  Object.fromEntries(Object.entries(all).map(([key, value]) => [key, whole(value)]));

const expectationJson = (one: Expectations) => ({ ...one, foreseen: hundredths(one.foreseen) });

function decisionJson(decision: Decision) {
  const { n, at, who, kind, step, planned, taken, chance, expected, finding, better } = decision;
  return {
    n,
    at,
    who: who ?? null,
    kind,
    step,
    planned: planned === undefined ? null : whole(planned),
    taken: whole(taken),
    chance: chance === undefined ? null : hundredths(chance),
    expected: expected ?? null,
    found: finding?.result ?? null,
    foreseen: Object.fromEntries(
      [...decision.foreseen].map(([result, likely]) => [result, hundredths(likely)]),
    ),
    better:
      better === undefined
        ? null
        : { do: better.step.do, id: better.step.id, because: better.because },
    charged: decision.charged,
    tellsNothing: decision.tellsNothing,
  };
}

/** People over several jobs as data. */
export const peopleJson = (reviews: readonly Review[]) =>
  peopleOf(reviews).map((person: Person) => ({
    ...person,
    expectations: expectationJson(person.expectations),
    trends: person.trends.map(({ months, all, least, most, ...trend }) => ({
      ...trend,
      months: Object.fromEntries([...months].map(([month, counted]) => [month, rounded(counted)])),
      all: rounded(all),
      least: hundredths(least),
      most: hundredths(most),
    })),
  }));

const columns = [
  'session',
  'date',
  'vehicle',
  'complaint',
  'closed',
  'n',
  'time',
  'who',
  'kind',
  'do',
  'id',
  'planned',
  'taken',
  'chance',
  'expected',
  'found',
  'better',
  'charged',
] as const;

/** A row a decision (RFC 4180), for a sheet: the first row names the columns. */
export const reviewCsv = (reviews: readonly Review[]): string =>
  [columns, ...reviews.flatMap((review) => review.decisions.map((one) => csvRow(review, one)))]
    .map((cells) => `${cells.map(cell).join(',')}\r\n`)
    .join('');

function csvRow(review: Review, decision: Decision): readonly string[] {
  const { n, at, who, kind, step, planned, taken, chance, expected, finding, better } = decision;
  return [
    review.session,
    dateOf(review.opened),
    review.vehicle,
    review.complaint,
    review.closed,
    String(n),
    at,
    who ?? '',
    kind,
    step.do,
    step.id,
    planned === undefined ? '' : String(whole(planned)),
    String(whole(taken)),
    chance === undefined ? '' : String(hundredths(chance)),
    expected ?? '',
    finding?.result ?? '',
    better === undefined ? '' : `${better.step.do} ${better.step.id}`,
    String(decision.charged),
  ];
}

/** A cell that a sheet takes for text and for no formula (a leading apostrophe: common practice). */
function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
