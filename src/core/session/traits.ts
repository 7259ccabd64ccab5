import type { Kind, PayloadOf } from './event.ts';

/** What a stretch of time was spent on that ended in an event. */
export type Work = 'checking' | 'opening up' | 'repairing' | 'waiting';

type Traits<K extends Kind> = {
  readonly work: Work;
  /** The field that a correction's words replace, or none of it; `never` is a fact about the file itself. */
  readonly corrects: (keyof PayloadOf<K> & string) | 'no words' | 'never';
};

/** What else holds of every kind. */
export const traits: { readonly [K in Kind]: Traits<K> } = {
  conditions: { work: 'checking', corrects: 'never' },
  standing: { work: 'opening up', corrects: 'never' },
  access: { work: 'opening up', corrects: 'never' },
  'check-begun': { work: 'checking', corrects: 'never' },
  found: { work: 'checking', corrects: 'no words' },
  unsure: { work: 'checking', corrects: 'no words' },
  skipped: { work: 'checking', corrects: 'reason' },
  noted: { work: 'checking', corrects: 'text' },
  photographed: { work: 'checking', corrects: 'caption' },
  'part-off': { work: 'opening up', corrects: 'part' },
  'part-on': { work: 'opening up', corrects: 'part' },
  timer: { work: 'checking', corrects: 'never' },
  condemned: { work: 'checking', corrects: 'found' },
  repaired: { work: 'repairing', corrects: 'did' },
  described: { work: 'checking', corrects: 'no words' },
  proved: { work: 'checking', corrects: 'no words' },
  leg: { work: 'checking', corrects: 'never' },
  corrected: { work: 'checking', corrects: 'never' },
  settled: { work: 'checking', corrects: 'no words' },
  'follow-up': { work: 'checking', corrects: 'text' },
  paused: { work: 'checking', corrects: 'never' },
  resumed: { work: 'waiting', corrects: 'never' },
  closed: { work: 'checking', corrects: 'never' },
};
