import type { PhotoField } from '../screen.ts';

/** The fields of a photo, in the order of its page. */
export const photoFields: readonly PhotoField[] = ['path', 'caption'];
