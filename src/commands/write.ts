import { join } from 'node:path';
import { writeUp, type WriteOptions, type Written } from '../core/account/account.ts';
import { withoutNames } from '../core/account/words/names.ts';
import type { Audience, Voice } from '../core/account/context.ts';
import { good, type Parsed } from '../core/problem.ts';
import { fold } from '../core/session/fold.ts';
import { passedOver, recordWarning } from '../core/session/record/damage.ts';
import { cleanRow } from '../core/text.ts';
import { dateOf } from '../core/session/clock.ts';
import { sessionName } from '../store/find.ts';
import { attempt, StoreError, type Files } from '../store/files.ts';
import { makeOwnFolder } from '../store/folder.ts';
import type { Recovered } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { writeWhole } from '../store/whole-file.ts';
import { isOwn } from '../core/tree/own/bare.ts';
import { photosFor } from './account-photos.ts';
import { done, type Ended, type Io } from './io.ts';
import { absolute, wrongUse, type Given } from './options.ts';
import { withSession, type Loaded } from './session.ts';

const use = {
  use: 'droplight write SESSION [--out DIR] [--voice i|we|they] [--for reader|mentor] [--front-matter] [--no-pictures] [--force]',
  options: {
    out: 'text',
    voice: 'text',
    for: 'text',
    'front-matter': 'flag',
    'no-pictures': 'flag',
    force: 'flag',
  },
} as const;

/** `droplight write SESSION`: the account as markdown with its pictures, the same bytes each time. */
export async function write(io: Io, args: readonly string[]): Promise<Ended> {
  return withSession(io, args, use, ({ given, ...session }) => {
    const how = readHow(io, given);
    if (how.kind === 'bad') return how;
    const path = writeOne(io, session, how.value);
    if (path.kind === 'bad') return path;
    io.out(`${cleanRow(path.value)}\n`);
    return done;
  });
}

type How = {
  readonly out?: string;
  readonly force?: boolean;
  readonly voice?: Voice;
  readonly audience?: Audience;
  readonly frontMatter?: boolean;
  readonly noPictures?: boolean;
};

const voices: readonly Voice[] = ['i', 'we', 'they'];
const audiences: readonly Audience[] = ['reader', 'mentor'];

function readHow(io: Io, given: Given): Parsed<How> {
  const [out, voice, audience] = [given.text('out'), given.text('voice'), given.text('for')];
  const spoken = voices.find((one) => one === (voice ?? 'we').toLowerCase());
  const read = audiences.find((one) => one === (audience ?? 'mentor'));
  if (spoken === undefined || read === undefined)
    return wrongUse(
      spoken === undefined ? 'The voice is i, we or they.' : 'An account is for reader or mentor.',
      use.use,
    );
  return good({
    ...(out !== undefined && { out: absolute(io, out) }),
    voice: spoken,
    audience: read,
    force: given.flag('force'),
    frontMatter: given.flag('front-matter'),
    noPictures: given.flag('no-pictures'),
  });
}

/** The account of a session that has been read; `pictures` names the folder of its pictures. */
export function accountOf(recovered: Recovered, options: WriteOptions = {}): Written {
  const { header, events } = options.audience === 'reader' ? withoutNames(recovered) : recovered;
  const record = {
    events: recovered.events.length,
    passedOver: passedOver(recovered.damage),
    warning: recordWarning(recovered.damage),
    link: recovered.link,
  };
  return writeUp(fold(header, events), record, options);
}

/** How we know a file as one of ours, to be written anew: an account by its last line, a picture by its first. */
const signatures = {
  account: /The record's closing link is [0-9a-f]*\.\n$/,
  picture: /^<svg xmlns="[^"]*" class="droplight" /,
} as const;

/** The account of a session as its file stands, written beside it: what the screens ask for. */
export async function writeAccount(io: Io, path: string): Promise<Parsed<string>> {
  const recovered = loadSession(io.disk.files, path);
  if (recovered.kind === 'bad') return recovered;
  return writeOne(io, { path, recovered: recovered.value }, {});
}

/**
 * Writes the account beside the session, or into a folder, with its pictures in a folder beside it.
 * @returns the path of the account; bad when the disk refuses it, or a file stands there that is not ours
 */
function writeOne(io: Io, session: Loaded, how: How): Parsed<string> {
  const folder = how.out ?? join(session.path, '..');
  const name = fileName(session.path, session.recovered, how);
  const path = join(folder, `${name}.md`);
  const written = attempt(path, () => writeAt(io, { folder, name }, session, how));
  return written.kind === 'bad' ? written : good(path);
}

type Place = { readonly folder: string; readonly name: string };

function writeAt(io: Io, { folder, name }: Place, session: Loaded, how: How): void {
  const { files } = io.disk;
  const { recovered } = session;
  const beside = `${name}.pictures`;
  const story = fold(recovered.header, recovered.events);
  const photos = photosFor(files, session.path, story, how.audience);
  const { markdown, pictures } = accountOf(recovered, {
    ...(how.voice !== undefined && { voice: how.voice }),
    ...(how.audience !== undefined && { audience: how.audience }),
    ...(how.noPictures !== true && { pictures: beside }),
    photos: photos.told,
    frontMatter: how.frontMatter === true,
  });
  const path = join(folder, `${name}.md`);
  const drawn = inFolder(join(folder, beside), Object.entries(pictures));
  const taken = inFolder(join(folder, beside), how.noPictures === true ? [] : photos.copies);
  if (how.force !== true) {
    refuseOthers(files, path, 'account');
    for (const [picture] of drawn) refuseOthers(files, picture, 'picture');
    for (const [photo, bytes] of taken) refuseOtherBytes(files, photo, bytes);
  }
  if (how.out !== undefined) files.makeFolder(folder);
  if (drawn.length + taken.length > 0) makeOwnFolder(files, join(folder, beside));
  for (const [picture, content] of [...drawn, ...taken]) writeWhole(files, picture, content);
  writeWhole(files, path, markdown);
}

const inFolder = <Content>(
  folder: string,
  named: Iterable<readonly [name: string, content: Content]>,
): readonly (readonly [path: string, content: Content])[] =>
  Array.from(named, ([name, content]) => [join(folder, name), content] as const);

/** The session's own name; a stranger gets one without the vehicle's name in it. */
function fileName(session: string, { header }: Recovered, { audience }: How): string {
  // What a job without a tree was named after are its owner's words.
  const complaint = isOwn({ id: header.tree }) ? 'own-complaint' : header.tree;
  return audience === 'reader' ? `${dateOf(header.opened)}-${complaint}` : sessionName(session);
}

function refuseOthers(files: Files, path: string, kind: keyof typeof signatures): void {
  if (!files.exists(path)) return;
  if (signatures[kind].test(new TextDecoder().decode(files.read(path)))) return;
  throw notOurs(path, kind);
}

/** A photo has nothing of ours in it: one that is there already has the very same bytes. */
function refuseOtherBytes(files: Files, path: string, bytes: Uint8Array): void {
  if (!files.exists(path)) return;
  if (files.sizeOf(path) === bytes.length && Buffer.compare(files.read(path), bytes) === 0) return;
  throw notOurs(path, 'photo');
}

const notOurs = (path: string, kind: string): StoreError =>
  new StoreError(
    'not-ours',
    `The file there is no ${kind} that Droplight wrote.`,
    'Choose another folder with --out, or say --force.',
    { path },
  );
