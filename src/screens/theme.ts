import type { TextProps } from 'ink';

/** Colours by meaning. Every one of these also has a word or a mark: colour is never alone. */
export type Meaning = 'title' | 'caution' | 'marked' | 'quiet' | 'problem' | 'plain';
type Style = Pick<TextProps, 'color' | 'bold' | 'inverse'>;
export type Theme = Readonly<Record<Meaning, Style>>;

/**
 * Day is for sun on the screen: the terminal's own colours, bold and inverse, nothing dim.
 * Night keeps the glare down.
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
    title: { bold: true, color: 'yellow' },
    caution: { bold: true, color: 'red' },
    marked: { bold: true, color: 'yellow' },
    quiet: { color: 'gray' },
    problem: { bold: true, color: 'red' },
    plain: { color: 'white' },
  },
};
