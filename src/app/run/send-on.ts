import type { Effect } from '../effect.ts';
import type { Program } from '../program.ts';

type Sent = Extract<Effect, { kind: 'strike' | 'play-on' | 'call' }>;

/** Messages that come of nothing but an effect: at once, or when its time has come. */
export function sendOn(effect: Sent, { dispatch }: Program): void {
  switch (effect.kind) {
    case 'strike':
      for (const token of effect.tokens) dispatch({ kind: 'key', token });
      return;
    case 'play-on':
      setTimeout(() => dispatch({ kind: 'played-on', at: effect.at }), effect.after);
      return;
    case 'call':
      // Nothing waits for it: the program may leave before.
      setTimeout(() => dispatch({ kind: 'ticked' }), effect.after).unref();
  }
}
