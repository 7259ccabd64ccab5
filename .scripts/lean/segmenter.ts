import { isPlain } from './plain.ts';

type Segments = Iterable<Intl.SegmentData>;

/**
 * Stands for `Intl.Segmenter` in the libraries of the bundle. To make one takes longer than to draw the
 * first frame, so it is made when a text comes that needs it.
 */
export function makeSegmenter(locale?: string, options?: Intl.SegmenterOptions) {
  let made: Intl.Segmenter | undefined;
  return {
    segment: (text: string): Segments =>
      isPlain(text) ? signsOf(text) : (made ??= new Intl.Segmenter(locale, options)).segment(text),
  };
}

const signsOf = (input: string): Segments =>
  Array.from(input, (segment, index) => ({ segment, index, input }));
