import { isApart } from './plain.ts';

/** What libraries ask of a segmented text: its characters in turn, and the one that holds a place in it. */
type Segments = Pick<Intl.Segments, 'containing'> & Iterable<Intl.SegmentData>;

/**
 * Stands for `Intl.Segmenter` in the libraries of the bundle. To make one takes longer than to draw the
 * first frame, so it is made when a text comes that needs it.
 */
export function makeSegmenter(locale?: string, options?: Intl.SegmenterOptions) {
  let made: Intl.Segmenter | undefined;
  return {
    segment: (text: string): Segments =>
      isApart(text) ? signsOf(text) : (made ??= new Intl.Segmenter(locale, options)).segment(text),
  };
}

function signsOf(input: string): Segments {
  const sign = (index: number): Intl.SegmentData => ({
    segment: input.charAt(index),
    index,
    input,
  });
  return {
    *[Symbol.iterator]() {
      for (let index = 0; index < input.length; index += 1) yield sign(index);
    },
    // As the real one is, it is undefined outside the text, which its type does not tell.
    containing: (index = 0) =>
      index >= 0 && index < input.length ? sign(index) : (undefined as never),
  };
}
