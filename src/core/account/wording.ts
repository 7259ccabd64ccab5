import type { Finding, Story } from '../session/story.ts';
import { showReading } from '../trade/units.ts';
import type { Check } from '../tree/model.ts';

/** First letter large, full stop at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  const begun = trimmed.slice(0, 1).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(begun) ? begun : `${begun}.`;
}

/** First letter small (unless the word is all capitals), no full stop: for use inside a sentence. */
export function clause(text: string): string {
  const trimmed = text.trim().replace(/\.$/, '');
  return /^[A-Z][a-z]/.test(trimmed)
    ? trimmed.slice(0, 1).toLowerCase() + trimmed.slice(1)
    : trimmed;
}

/** A cause by its name, from whichever tree of the session holds it. */
export const causeName = (story: Story, id: string): string =>
  story.legs.map(({ tree }) => tree.causes[id]?.name).findLast((name) => name !== undefined) ?? id;

/** A check by its id, from the leg it was asked in or any other. */
export const checkIn = (story: Story, id: string, leg?: number): Check | undefined =>
  story.legs[leg ?? story.legs.length - 1]?.tree.checks[id] ??
  story.legs.map(({ tree }) => tree.checks[id]).find((check) => check !== undefined);

/** What a check asks, without the mark at its end. */
export const askWords = (story: Story, id: string, leg?: number): string =>
  (checkIn(story, id, leg)?.ask ?? id).replace(/[?.:]$/, '');

/** What a finding showed in words: the label of its result, or of the two it may be. */
export function shownWords(story: Story, finding: Finding): string {
  const results = checkIn(story, finding.check, finding.leg)?.results ?? [];
  return [finding.result, finding.orResult]
    .filter((id) => id !== undefined)
    .map((id) => results.find((result) => result.id === id)?.label ?? id)
    .join(' or ');
}

/** The reading of a finding as it was taken, with its unit; empty when none was. */
export function readingWords({ reading, standard }: Finding): string {
  if (reading === undefined) return '';
  const read = showReading(reading.value, reading.unit);
  return standard === undefined
    ? read
    : `${read} (as ${showReading(standard.value, standard.unit)} ${standard.under})`;
}

/** Names of things a step is done with or to, joined as in speech: `a, b and c`. */
export function joined(parts: readonly string[]): string {
  const last = parts.at(-1);
  if (last === undefined || parts.length < 2) return last ?? '';
  return `${parts.slice(0, -1).join(', ')} and ${last}`;
}
