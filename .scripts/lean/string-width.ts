import { isPlain } from './plain.ts';

type Width = (text: string, options?: object) => number;

/**
 * Stands for `string-width` in the libraries of the bundle: its expressions take long to be read, so the
 * whole of it is loaded when a text comes that needs it.
 */
export function widthBy(load: () => Width): Width {
  let whole: Width | undefined;
  return (text, options) => (isPlain(text) ? text.length : (whole ??= load())(text, options));
}
