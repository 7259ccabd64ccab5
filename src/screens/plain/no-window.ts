import { createContext, useContext } from 'react';
import { lineNumber } from '../../app/keys/cursor.ts';

/** Rows where there is no window, and lines go one under the other for as long as there are some. */
export const endless = Infinity;

/** Whether there is none: then lines are folded and never cut, and each line of a list has a number. */
export const NoWindow = createContext(false);
export const useNoWindow = (): boolean => useContext(NoWindow);

/** The number of a line: without a window each has one, else those that a digit picks now. */
export const numberOf = (index: number, cursor: number, rows: number): number | undefined =>
  rows === endless ? index + 1 : lineNumber(index, cursor);
