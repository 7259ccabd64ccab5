import { readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { story } from '../../src/commands/story.ts';
import { verify } from '../../src/commands/verify.ts';
import { write } from '../../src/commands/write.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { begun, said } from '../helpers/begun.ts';
import { runCommand } from '../helpers/commands.ts';
import { drawnJpeg, exifSegment, exifWithPlace } from '../helpers/drawn-picture.ts';

const placed = Buffer.from(drawnJpeg([exifSegment(exifWithPlace(6))]));
const shown = { do: 'photo', file: 'link.jpg', caption: 'The link (burnt)' };

/** A session beside a photo with the place in it, after some actions. */
async function withPhoto(...actions: readonly object[]) {
  const { folder, path } = await begun();
  writeFileSync(join(folder, 'link.jpg'), placed);
  const ran = await runCommand(enter, [path], { folder, lines: said(...(actions as never[])) });
  const answers = ran.out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { ok: boolean; problem?: { code: string } });
  const photos = join(dirname(path), `${path.replace(/^.*\//, '').replace('.jsonl', '')}.photos`);
  return { folder, path, answers, photos, code: ran.code };
}

test('a photo entered is on the disk with its hash, and stands in the story', async () => {
  const { folder, path, answers, photos } = await withPhoto(shown);

  const { out } = await runCommand(story, [path, '--json'], { folder });

  expect(answers.map(({ ok }) => ok)).toEqual([true]);
  const { photos: told } = JSON.parse(out) as { photos: { sha256: string; bytes: number }[] };
  expect(told).toMatchObject([{ caption: 'The link (burnt)', bytes: placed.length }]);
  expect(told[0]?.sha256).toMatch(/^[0-9a-f]{64}$/);
  expect(readFileSync(join(photos, '01-the-link-burnt.jpg')).equals(placed)).toBe(true);
});

test.each([
  ['a photo that is not there', { ...shown, file: 'lamp.jpg' }, 'photo-missing', 2],
  ['a step that is not there', { ...shown, about: 'flux' }, 'unknown-subject', 2],
  ['a part that was not taken off', { ...shown, about: 'part:77' }, 'unknown-subject', 2],
  ['a hash of its own', { ...shown, sha256: 'a'.repeat(64) }, 'wrong-action', 2],
])('%s is refused, and no copy stays', async (_, action, problem, exit) => {
  const { answers, photos, code } = await withPhoto(action);

  expect(answers[0]).toMatchObject({ ok: false, problem: { code: problem } });
  expect(code).toBe(exit);
  expect(nodeFiles.list(photos)).toEqual([]);
});

test('a photo of a part is tied to the number of its event', async () => {
  const { answers } = await withPhoto(
    { do: 'part-off', part: 'bezel' },
    { ...shown, about: 'part:1' },
  );
  const n = (answers[0] as unknown as { n: number }).n;
  const again = await withPhoto(
    { do: 'part-off', part: 'bezel' },
    { ...shown, about: `part:${n}` },
  );

  expect(again.answers.map(({ ok }) => ok)).toEqual([true, true]);
});

test('a disk that refuses the event leaves no copy either', async () => {
  const { folder, path } = await begun();
  writeFileSync(join(folder, 'link.jpg'), placed);
  const syncNow = (handle: number): void => {
    if (nodeFiles.placeOf(handle).size !== placed.length)
      throw Object.assign(new Error('planted'), { code: 'ENOSPC' });
    nodeFiles.syncNow(handle);
  };

  const ran = await runCommand(enter, [path], {
    folder,
    lines: said({ do: 'photo', file: 'link.jpg' }),
    files: { ...nodeFiles, syncNow },
  });

  expect(ran.code).toBe(3);
  expect(nodeFiles.list(path.replace('.jsonl', '.photos'))).toEqual([]);
});

test.each([
  ['missing', (path: string) => rmSync(path)],
  ['changed', (path: string) => writeFileSync(path, drawnJpeg())],
] as const)('verify tells a photo that is %s', async (state, harm) => {
  const { folder, path, photos } = await withPhoto(shown);
  const before = await runCommand(verify, [path], { folder });
  harm(join(photos, '01-the-link-burnt.jpg'));

  const { code, out } = await runCommand(verify, [path], { folder });
  const json = await runCommand(verify, [path, '--json'], { folder });

  expect(before.code).toBe(0);
  expect(code).toBe(1);
  expect(out).toContain('whole, but not its photos: ');
  expect(out).toContain(`/01-the-link-burnt.jpg of event`);
  expect(JSON.parse(json.out)).toMatchObject([{ state: 'whole', photos: [{ state }] }]);
});

test('the account shows a photo where it was taken, with its caption, the same bytes each time', async () => {
  const { folder, path } = await withPhoto(shown);

  const { out } = await runCommand(write, [path], { folder });
  const text = readFileSync(out.trim(), 'utf8');
  await runCommand(write, [path], { folder });

  const [, caption, file = ''] = /!\[(The link[^\]]*)\]\((\S+photo-\d+\.jpg)\)/.exec(text) ?? [];
  expect(caption).toBe('The link (burnt)');
  expect(readFileSync(join(dirname(path), file)).equals(placed)).toBe(true);
  expect(readFileSync(out.trim(), 'utf8')).toBe(text);
});

test('a stranger gets the photo without the place; the one beside the session keeps its bytes', async () => {
  const { folder, path, photos } = await withPhoto(shown);

  const { out } = await runCommand(write, [path, '--for', 'reader'], { folder });
  const again = await runCommand(write, [path, '--for', 'reader'], { folder });

  const pictures = out.trim().replace(/\.md$/, '.pictures');
  const [copy = ''] = readdirSync(pictures).filter((name) => name.endsWith('.jpg'));
  expect(placed.includes('PLACE')).toBe(true);
  expect(readFileSync(join(pictures, copy)).includes('PLACE')).toBe(false);
  expect(again.code).toBe(0);
  expect(readFileSync(join(photos, '01-the-link-burnt.jpg')).equals(placed)).toBe(true);
  expect((await runCommand(verify, [path], { folder })).code).toBe(0);
});

test('a photo that is missing is said, and one is told in words where there are no pictures', async () => {
  const { folder, path, photos } = await withPhoto(shown);
  const plain = await runCommand(write, [path, '--no-pictures'], { folder });
  const words = readFileSync(plain.out.trim(), 'utf8');
  renameSync(photos, `${photos}-away`);

  const { out } = await runCommand(write, [path], { folder });

  expect(words).toContain('a photograph was taken: the link (burnt)');
  expect(readFileSync(out.trim(), 'utf8')).toContain(
    'a photograph was taken: the link (burnt) (its file is missing beside the record)',
  );
});

test('no photo of somebody else is written over', async () => {
  const { folder, path } = await withPhoto(shown);
  const { out } = await runCommand(write, [path], { folder });
  const pictures = out.trim().replace(/\.md$/, '.pictures');
  const [copy = ''] = readdirSync(pictures).filter((name) => name.endsWith('.jpg'));
  writeFileSync(join(pictures, copy), drawnJpeg());

  const refused = await runCommand(write, [path], { folder });
  const forced = await runCommand(write, [path, '--force'], { folder });

  expect([refused.code, forced.code]).toEqual([2, 0]);
  expect(refused.err).toContain('no photo that Droplight wrote');
  expect(readFileSync(join(pictures, copy)).equals(placed)).toBe(true);
});
