import type { Io } from '../io.ts';

/** Milliseconds that anybody waits without asking why. */
const patience = 300;

export type Progress = { readonly done: number; readonly of: number };

/**
 * Tells who waits at a terminal how far a long work is: a line on standard error that is drawn over itself
 * and gone at the end. A file or another program is told nothing, and nobody is told of what is soon over.
 */
export function teller(
  { err, clock, drawsOver }: Pick<Io, 'err' | 'clock' | 'drawsOver'>,
  what: string,
) {
  const began = clock().mono;
  let told = -1;
  return {
    tell: ({ done, of }: Progress): void => {
      const part = Math.floor((100 * done) / of);
      if (drawsOver !== true || part === told || clock().mono - began < patience) return;
      told = part;
      err(`\r${what}: ${done} of ${of}`);
    },
    /** Takes the drawn line away; nothing was drawn where nothing was told. */
    end: (): void => {
      if (told >= 0) err('\r\x1b[K');
    },
  };
}
