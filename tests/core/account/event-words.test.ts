import { expect, test } from 'vitest';
import { clauseOf, eventWords } from '../../../src/core/account/clauses/clauses.ts';
import { accountContext, type AccountPhoto } from '../../../src/core/account/context.ts';
import type { Payload } from '../../../src/core/session/event.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { headerFor, stampAt } from '../../helpers/story.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';

const storyOf = (payloads: readonly Payload[]) =>
  fold(
    headerFor(),
    payloads.map((payload, index) => newEvent(index + 1, stampAt(index + 1), payload)),
  );

/** The events of a session one by one in words, as a list of them tells them. */
function told(...payloads: readonly Payload[]): readonly string[] {
  const story = storyOf(payloads);
  return story.entries.map((entry) => eventWords(story, entry));
}

const leg = { kind: 'leg', tree: 'other', whole: smallTree(), shop: smallShop } as const;

test.each<[what: string, said: Payload, words: string]>([
  [
    'a part with where it was put',
    { kind: 'part-off', part: 'bezel', where: 'tray' },
    'We took off the bezel (tray).',
  ],
  [
    'a part whose name brings its article',
    { kind: 'part-off', part: 'both lenses' },
    'We took off both lenses.',
  ],
  [
    'an aid put on',
    { kind: 'aid-on', aid: 'a jumper at the coil' },
    'We put on for a while: a jumper at the coil.',
  ],
  [
    'an aid taken off',
    { kind: 'aid-off', aid: 'a jumper at the coil' },
    'What had been put on came off again: a jumper at the coil.',
  ],
  ['a part back on', { kind: 'part-on', part: 'bezel' }, 'The bezel went back on.'],
  [
    'work taken up after a power loss',
    { kind: 'resumed', torn: 17 },
    'We took the work up again; the record had been cut off in the middle of a line, which is passed over.',
  ],
  ['work taken up', { kind: 'resumed' }, 'We took the work up again.'],
  [
    'a thing left to do',
    { kind: 'follow-up', urgency: 'soon', text: 'new tires' },
    'To be done later: new tires.',
  ],
  [
    'a timer',
    { kind: 'timer', label: 'cool down', minutes: 10 },
    'We set a timer of 10 min: cool down.',
  ],
])('%s is told in whole words', (_, said, words) => {
  expect(told(said)).toEqual([words]);
});

test('another complaint is told with its title, and with why if that was said', () => {
  const { title } = leg.whole;

  expect(told(leg)).toEqual([`The search went on under "${title}".`]);
  expect(told({ ...leg, reason: 'it cranks now' })).toEqual([
    `The search went on under "${title}": it cranks now.`,
  ]);
});

/** How an account tells of a photograph that has become of something. */
function toldPhoto(photo: AccountPhoto) {
  const story = storyOf([{ kind: 'photographed', file: 'j.photos/01-f.jpg', caption: 'the fuse' }]);
  const [entry] = story.entries;
  if (entry === undefined) throw new Error('nothing was told');
  const options = { pictures: 'job.pictures', photos: new Map([[1, photo]]) };
  const clause = clauseOf(accountContext(story, options, []), entry);
  return clause?.picture ?? clause?.phrase({ when: '' });
}

test.each<[photo: AccountPhoto, told: ReturnType<typeof toldPhoto>]>([
  [
    { kind: 'there', file: 'photo-1.jpg' },
    { kind: 'picture', file: 'job.pictures/photo-1.jpg', caption: 'the fuse' },
  ],
  [
    { kind: 'missing' },
    'A photograph was taken: the fuse (its file is missing beside the record).',
  ],
  [
    { kind: 'changed' },
    'A photograph was taken: the fuse (its file beside the record is not the one that was kept, and is not shown).',
  ],
])('a photograph that is %j is told', (photo, told) => {
  expect(toldPhoto(photo)).toEqual(told);
});

test('a photograph without a caption is told so, and a list of events names no file', () => {
  const bare: Payload = { kind: 'photographed', file: '../fuse.jpg', caption: ' ' };

  expect(told(bare)).toEqual(['A photograph was taken; what it shows was not noted.']);
  expect(told(bare, { kind: 'described', of: 1, caption: 'the fuse' })).toEqual([
    'A photograph was taken: the fuse.',
    'We noted what a photograph shows: the fuse.',
  ]);
});

test('what was withdrawn says so where it stood, and why', () => {
  const found: Payload = { kind: 'found', check: 'look', result: 'burnt' };
  const [stood, withdrawal] = told(found, { kind: 'corrected', of: 1, reason: 'wrong fuse' });
  const [, put] = told(found, { kind: 'corrected', of: 1, to: { ...found, result: 'whole' } });

  expect(stood).toBe(
    'We first wrote down "burnt" for "Is the fuse whole?", and took it back later: wrong fuse.',
  );
  expect(withdrawal).toBe('An earlier entry was withdrawn.');
  expect(put).toBe('An earlier entry was put right.');
});

test('a note that was withdrawn is told as an entry', () => {
  const [stood] = told({ kind: 'noted', text: 'x' }, { kind: 'corrected', of: 1 });

  expect(stood).toBe('An entry stood here and was taken back later.');
});
