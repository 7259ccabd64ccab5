import { parseISO } from 'date-fns/parseISO';

/** Minutes on the wall clock between two ISO times; 0 where one cannot be read. */
export function wallMinutes(from: string, to: string): number {
  const minutes = (parseISO(to).getTime() - parseISO(from).getTime()) / 60_000;
  return Number.isFinite(minutes) ? minutes : 0;
}
