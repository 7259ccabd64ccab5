import { isPlain } from './plain.ts';

type Width = (text: string, options?: object) => number;

/** What colours and styles a text, and takes no column. */
const styling = /\u001b\[[\d;]*m/g;

/**
 * Stands for `string-width` in the libraries of the bundle: its expressions take long to be read, so the
 * whole of it is loaded when a text comes that needs it.
 */
export function widthBy(load: () => Width): Width {
  let whole: Width | undefined;
  return (text, options) => {
    if (isPlain(text)) return text.length;
    // With options the styling may have to be counted.
    const bare = options === undefined ? text.replaceAll(styling, '') : text;
    return isPlain(bare) ? bare.length : (whole ??= load())(text, options);
  };
}
