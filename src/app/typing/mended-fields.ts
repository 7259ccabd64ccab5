import type { MendedField } from '../screen.ts';

/** The fields of a repair, in the order of its page. */
export const mendedFields: readonly MendedField[] = ['did', 'minutes', 'parts', 'cost'];
