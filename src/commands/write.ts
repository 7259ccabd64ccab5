import { join } from 'node:path';
import { writeUp, type WriteOptions, type Written } from '../core/account/account.ts';
import { withoutNames } from '../core/account/words/names.ts';
import type { Audience, Length, Voice } from '../core/account/context.ts';
import { freshOf, withMarkers } from '../core/account/forms/sections.ts';
import { good, type Parsed } from '../core/problem.ts';
import { fold } from '../core/session/fold.ts';
import { passedOver, recordWarning } from '../core/session/record/damage.ts';
import { cleanLine, cleanRow } from '../core/text.ts';
import { dateOf } from '../core/session/clock.ts';
import { sessionName } from '../store/find.ts';
import { attempt, type Files } from '../store/files.ts';
import type { Recovered } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { writeWhole } from '../store/whole-file.ts';
import { isOwn } from '../core/tree/own/bare.ts';
import {
  accountForms,
  nothingKept,
  pageOf,
  refuseEdited,
  refuseOthers,
  textOf,
  withEdits,
  writePictures,
  writeWholeForm,
  type AccountForm,
  type Kept,
  type Pictured,
} from './account-files.ts';
import { photosFor } from './account-photos.ts';
import { done, type Ended, type Io } from './io.ts';
import { drawnBy, loadRaster, type Raster } from './raster.ts';
import { absolute, wrongUse, type Given } from './options.ts';
import { withSession, type Loaded } from './session.ts';
import { callOf, uses } from './uses.ts';

/** `droplight write SESSION`: the account in its form with its pictures, the same bytes each time. */
export async function write(io: Io, args: readonly string[]): Promise<Ended> {
  const raster = args.includes('--png') ? await loadRaster() : undefined;
  if (raster?.kind === 'bad') return raster;
  return withSession(io, args, uses.write, ({ given, ...session }) => {
    const read = readHow(io, given);
    if (read.kind === 'bad') return read;
    const how = { ...read.value, ...(raster !== undefined && { raster: raster.value }) };
    if (how.length === 'line') {
      io.out(lineOf(session.recovered, how));
      return done;
    }
    const one = writeOne(io, session, how);
    if (one.kind === 'bad') return one;
    io.out(`${cleanRow(one.value.path)}\n`);
    for (const line of keptLines(one.value)) io.err(`${line}\n`);
    return done;
  });
}

/** The job in one line is for a log: it goes to standard output. */
const lineOf = (recovered: Recovered, how: How): string =>
  accountOf(recovered, { ...optionsOf(how), length: 'line' })
    .blocks.flatMap((block) =>
      block.kind === 'paragraph' && typeof block.text === 'string'
        ? [`${cleanLine(block.text)}\n`]
        : [],
    )
    .join('');

/** What was kept of a writer's edits, a line each. */
function keptLines({ kept, stale, dropped }: Kept): readonly string[] {
  return [
    ...(kept.length === 0 ? [] : [`Kept as you edited it: ${kept.join(', ')}.`]),
    ...(stale.length === 0
      ? []
      : [`The record tells more by now, which is not in what you edited: ${stale.join(', ')}.`]),
    ...(dropped.length === 0 ? [] : [`Left out, as you left it out: ${dropped.join(', ')}.`]),
  ];
}

type How = {
  readonly form?: AccountForm;
  readonly length?: Length;
  readonly out?: string;
  readonly force?: boolean;
  readonly voice?: Voice;
  readonly audience?: Audience;
  readonly frontMatter?: boolean;
  readonly noPictures?: boolean;
  /** Draws pictures as PNG. */
  readonly raster?: Raster;
};

/** The words that an option takes, the first one where it is left out. */
const words = uses.write.values;

const told = {
  voice: 'The voice is i, we or they.',
  for: 'An account is for shop, reader or mentor.',
  as: 'An account is written as md, html or text.',
  length: 'The length is line, short or full.',
} as const;

type Word = keyof typeof words;

/** An option by its word; undefined for one that is none of these. */
const wordOf = <Name extends Word>(
  given: Given,
  name: Name,
): (typeof words)[Name][number] | undefined => {
  const all: readonly (typeof words)[Name][number][] = words[name];
  const said = given.text(name)?.toLowerCase();
  return said === undefined ? all[0] : all.find((one) => one === said);
};

function readHow(io: Io, given: Given): Parsed<How> {
  const [voice, audience] = [wordOf(given, 'voice'), wordOf(given, 'for')];
  const [form, length] = [wordOf(given, 'as'), wordOf(given, 'length')];
  const out = given.text('out');
  if (voice === undefined) return wrongUse(told.voice, callOf('write'));
  if (audience === undefined) return wrongUse(told.for, callOf('write'));
  if (form === undefined) return wrongUse(told.as, callOf('write'));
  if (length === undefined) return wrongUse(told.length, callOf('write'));
  return good({
    ...(out !== undefined && { out: absolute(io, out) }),
    voice,
    audience,
    form,
    length,
    force: given.flag('force'),
    frontMatter: given.flag('front-matter'),
    noPictures: given.flag('no-pictures'),
  });
}

const optionsOf = ({ voice, audience, length, frontMatter }: How): WriteOptions => ({
  ...(voice !== undefined && { voice }),
  ...(audience !== undefined && { audience }),
  ...(length !== undefined && { length }),
  frontMatter: frontMatter === true,
});

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

/** The account of a session as its file stands, written beside it: what the screens ask for. */
export async function writeAccount(io: Io, path: string): Promise<Parsed<Wrote>> {
  const recovered = loadSession(io.disk.files, path);
  if (recovered.kind === 'bad') return recovered;
  return writeOne(io, { path, recovered: recovered.value }, {});
}

type Wrote = { readonly path: string } & Kept;

/**
 * Writes the account beside the session, or into a folder, with its pictures in a folder beside it.
 * @returns the path of the account, and what was kept of the one before; bad when the disk refuses it, or a
 * file stands there that is not ours or was edited where that cannot be kept
 */
function writeOne(io: Io, session: Loaded, how: How): Parsed<Wrote> {
  const folder = how.out ?? join(session.path, '..');
  const name = fileName(session.path, session.recovered, how);
  const path = join(folder, `${name}${accountForms[how.form ?? 'md']}`);
  const written = attempt(path, () => writeAt(io, { folder, name, path }, session, how));
  return written.kind === 'bad' ? written : good({ path, ...written.value });
}

type Place = { readonly folder: string; readonly name: string; readonly path: string };

function writeAt(io: Io, { folder, name, path }: Place, session: Loaded, how: How): Kept {
  const { files } = io.disk;
  const beside = `${name}.pictures`;
  const { written, pictured } = picturedAccount(io, session, how, beside);
  if (how.out !== undefined) files.makeFolder(folder);
  if (how.form === 'html')
    return writeWholeForm(files, path, pageOf(written, beside, pictured), how);
  if (how.form === 'text') {
    if (how.force !== true) refuseEdited(files, path);
    writePictures(files, join(folder, beside), pictured, how);
    return writeWholeForm(files, path, textOf(written), how);
  }
  const { text, ...kept } = markdownOf(files, path, written, how);
  writePictures(files, join(folder, beside), pictured, how);
  writeWhole(files, path, text);
  return kept;
}

/** The account with what lies in its folder of pictures. */
function picturedAccount(io: Io, session: Loaded, how: How, beside: string) {
  const { files } = io.disk;
  const story = fold(session.recovered.header, session.recovered.events);
  const photos = photosFor(files, session.path, story, how.audience);
  const written = accountOf(session.recovered, {
    ...optionsOf(how),
    ...(how.noPictures !== true && { pictures: beside }),
    ...(how.raster !== undefined && { drawnAs: 'png' }),
    photos: photos.told,
  });
  const pictured: Pictured = new Map<string, string | Uint8Array>([
    ...drawnBy(io, written.pictures, how.raster),
    ...(how.noPictures === true || isShortened(how) ? [] : photos.copies),
  ]);
  return { written, pictured };
}

/** The account as markdown for the disk, with what its writer edited in the one that stands there. */
function markdownOf(
  files: Files,
  path: string,
  written: Written,
  { force }: How,
): { readonly text: string } & Kept {
  if (force === true)
    return { text: withMarkers(freshOf(written.frontMatter, written.markdown)), ...nothingKept };
  refuseOthers(files, path, 'account');
  return withEdits(files, path, written);
}

/** What is shorter than the whole shows no picture. */
const isShortened = ({ length = 'full' }: How): boolean => length !== 'full';

/** The session's own name; a stranger gets one without the vehicle's name in it. */
function fileName(session: string, { header }: Recovered, { audience }: How): string {
  // What a job without a tree was named after are its owner's words.
  const complaint = isOwn({ id: header.tree }) ? 'own-complaint' : header.tree;
  return audience === 'reader' ? `${dateOf(header.opened)}-${complaint}` : sessionName(session);
}
