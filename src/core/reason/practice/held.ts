import { readAnswer } from '../../session/answer.ts';
import { askedNow } from '../../session/answered.ts';
import type { Event, PayloadOf, UnknownEvent } from '../../session/event.ts';
import { fold, step, type Recorded } from '../../session/fold.ts';
import { commitmentOf, type Secret } from '../../session/practice/secret.ts';
import type { Fingerprint } from '../../session/record/chain.ts';
import { asProof } from '../../session/rules/prove.ts';
import { currentLeg, type Story } from '../../session/story.ts';
import { vehicleAnswer } from './answer.ts';

/** What a practice session has told of its fault, held against what it was committed to. */
export type Reveal =
  | { readonly kind: 'hidden' | 'lost' | 'held' }
  /** Another fault, or another salt, than the first line was committed to. */
  | { readonly kind: 'other fault' }
  /** Events whose answers are not those of the vehicle. */
  | { readonly kind: 'other answers'; readonly events: readonly number[] };

/** Holds the fault that was told against the commitment, and every answer against its vehicle; undefined for a job. */
export function checkReveal(
  { header, events }: Recorded,
  fingerprint: Fingerprint,
): Reveal | undefined {
  const { practice } = header;
  if (practice === undefined) return undefined;
  const { revealed } = fold(header, events);
  if (revealed === undefined) return { kind: 'hidden' };
  const { causes, salt } = revealed;
  if (causes === undefined || salt === undefined) return { kind: 'lost' };
  const secret = { causes, salt };
  if (commitmentOf(secret, fingerprint) !== practice.commitment) return { kind: 'other fault' };
  const strange = strangeAnswers({ header, events }, secret);
  return strange.length === 0 ? { kind: 'held' } : { kind: 'other answers', events: strange };
}

function strangeAnswers({ header, events }: Recorded, secret: Secret): readonly number[] {
  let story = fold(header, []);
  const strange: number[] = [];
  for (const event of events) {
    if (!isAsShown(story, event, secret)) strange.push(event.n);
    story = step(story, event);
  }
  return strange;
}

function isAsShown(story: Story, event: Event | UnknownEvent, secret: Secret): boolean {
  if (event.kind === 'corrected') return event.to === undefined || !('result' in event.to);
  if (event.kind === 'unsure' || event.kind === 'not-this') return false;
  return event.kind === 'found' || event.kind === 'proved' ? isShown(story, event, secret) : true;
}

type Shown = PayloadOf<'found'> | PayloadOf<'proved'>;

function isShown(story: Story, said: Shown, secret: Secret): boolean {
  const check = currentLeg(story).tree.checks[said.check];
  const answer = vehicleAnswer(story, secret, said.check);
  if (check === undefined || answer === undefined) return false;
  const read = readAnswer(askedNow(story, said.check, check), { ...answer, insist: true });
  if (read.kind === 'refused') return false;
  const shown = said.kind === 'proved' ? asProof(check, read) : read.shown;
  return shown.result === said.result && shown.reading?.value === said.reading?.value;
}
