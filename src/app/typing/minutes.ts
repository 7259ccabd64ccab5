import type { Problem } from '../../core/problem.ts';

/** Minutes as typed: `40`, `40 min`, `12,5`, or hours and minutes as `1:20` or `1 h 20`. */
export function parseMinutes(text: string): number | undefined {
  const hours = /^(\d{1,3})\s*(?::|h)\s*(?:([0-5]?\d)\s*(?:m|min|minutes)?)?$/i.exec(text);
  if (hours !== null) return Number(hours[1]) * 60 + Number(hours[2] ?? 0);
  const minutes = /^(\d{1,5}(?:[.,]\d+)?)\s*(?:m|min|minutes)?$/i.exec(text);
  return minutes === null ? undefined : Number(minutes[1]?.replace(',', '.'));
}

/** That words are no number of minutes. */
export const noMinutes = (text: string): Problem => ({
  code: 'minutes-unreadable',
  message: `"${text}" is no number of minutes:`,
  mend: 'type it like 40, or 1:20.',
});
