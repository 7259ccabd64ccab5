import type { TextProps } from 'ink';

/** Colours by meaning. Every one of these also has a word or a mark: colour is never alone. */
export const meanings = ['title', 'caution', 'marked', 'quiet', 'problem', 'plain'] as const;
export type Meaning = (typeof meanings)[number];
type Style = Pick<TextProps, 'color' | 'bold' | 'inverse'>;
export type Theme = Readonly<Record<Meaning, Style>> & {
  /** Painted under everything; without one the terminal's own stands, and no colour is set. */
  readonly background?: string;
};

/**
 * Day is for sun on the screen: the terminal's own colours, bold and inverse, nothing dim.
 * Night keeps the glare down on a ground of its own, whatever the terminal's is: each colour stands
 * out from it by 4.5 to 1 at least.
 */
export const themes: Readonly<Record<'day' | 'night', Theme>> = {
  day: {
    title: { bold: true },
    caution: { bold: true },
    marked: { inverse: true },
    quiet: {},
    problem: { bold: true, inverse: true },
    plain: {},
  },
  night: {
    background: '#141414',
    title: { bold: true, color: '#d8b45a' },
    caution: { bold: true, color: '#f08a7a' },
    marked: { bold: true, color: '#e8c46a' },
    quiet: { color: '#8f8f8f' },
    problem: { bold: true, color: '#ff8f80' },
    plain: { color: '#b8b8b8' },
  },
};
