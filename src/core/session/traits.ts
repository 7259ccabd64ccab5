import type { Kind, PayloadOf } from './event.ts';

/** What a stretch of time was spent on that ended in an event. */
export type Work = 'checking' | 'opening up' | 'repairing' | 'waiting';

type Traits<K extends Kind> = {
  readonly work: Work;
  /**
   * The field that a correction's words replace, or none of it; what is `only withdrawn` cannot be said
   * otherwise, and `never` is a fact about the file itself.
   */
  readonly corrects: (keyof PayloadOf<K> & string) | 'no words' | 'only withdrawn' | 'never';
};

/** What else holds of every kind. */
export const traits: { readonly [K in Kind]: Traits<K> } = {
  conditions: { work: 'checking', corrects: 'only withdrawn' },
  standing: { work: 'opening up', corrects: 'only withdrawn' },
  access: { work: 'opening up', corrects: 'only withdrawn' },
  'check-begun': { work: 'checking', corrects: 'only withdrawn' },
  expected: { work: 'checking', corrects: 'only withdrawn' },
  found: { work: 'checking', corrects: 'no words' },
  unsure: { work: 'checking', corrects: 'no words' },
  skipped: { work: 'checking', corrects: 'reason' },
  noted: { work: 'checking', corrects: 'text' },
  photographed: { work: 'checking', corrects: 'caption' },
  'part-off': { work: 'opening up', corrects: 'part' },
  'part-on': { work: 'opening up', corrects: 'part' },
  'left-apart': { work: 'checking', corrects: 'why' },
  'aid-on': { work: 'checking', corrects: 'aid' },
  'aid-off': { work: 'checking', corrects: 'aid' },
  timer: { work: 'checking', corrects: 'only withdrawn' },
  'timer-off': { work: 'waiting', corrects: 'only withdrawn' },
  'part-bought': { work: 'checking', corrects: 'part' },
  limit: { work: 'checking', corrects: 'only withdrawn' },
  condemned: { work: 'checking', corrects: 'found' },
  'not-this': { work: 'checking', corrects: 'no words' },
  repaired: { work: 'repairing', corrects: 'did' },
  'check-named': { work: 'checking', corrects: 'what' },
  'check-taken': { work: 'checking', corrects: 'only withdrawn' },
  'cause-named': { work: 'checking', corrects: 'name' },
  described: { work: 'checking', corrects: 'no words' },
  proved: { work: 'checking', corrects: 'no words' },
  worker: { work: 'waiting', corrects: 'who' },
  leg: { work: 'checking', corrects: 'only withdrawn' },
  corrected: { work: 'checking', corrects: 'never' },
  settled: { work: 'checking', corrects: 'no words' },
  baseline: { work: 'checking', corrects: 'seen' },
  'follow-up': { work: 'checking', corrects: 'text' },
  paused: { work: 'checking', corrects: 'never' },
  resumed: { work: 'waiting', corrects: 'never' },
  closed: { work: 'checking', corrects: 'only withdrawn' },
  hinted: { work: 'checking', corrects: 'never' },
  revealed: { work: 'checking', corrects: 'never' },
  reopened: { work: 'checking', corrects: 'only withdrawn' },
};
