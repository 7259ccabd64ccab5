import type { Check } from '../model.ts';

/**
 * A check that stands in no file: named in own words, or an open look. Nothing need be opened or set
 * for it, and it is priced by nobody.
 */
export const madeCheck = (
  said: Pick<Check, 'kind' | 'ask' | 'results'> & Partial<Check>,
): Check => ({
  how: [],
  minutes: 0,
  access: [],
  standing: {},
  cautions: [],
  tools: [],
  points: {},
  ...said,
});
