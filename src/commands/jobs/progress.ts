import type { Io } from '../io.ts';

/** Told on standard error: one line drawn over itself on a terminal, a line a tenth elsewhere. */
export function teller(io: Pick<Io, 'err' | 'isTerminal'>, what: string) {
  let told = -1;
  return {
    tell: ({ done, of }: { readonly done: number; readonly of: number }): void => {
      const part = Math.floor((io.isTerminal ? 100 : 10) * (done / of));
      if (part === told) return;
      told = part;
      const line = `${what}: ${done} of ${of}`;
      io.err(io.isTerminal ? `\r${line}` : `${line}\n`);
    },
    /** Takes the drawn line away; nothing was drawn where nothing was told. */
    end: (): void => {
      if (io.isTerminal && told >= 0) io.err('\r\x1b[K');
    },
  };
}
