import { join } from 'node:path';
import {
  freshOf,
  hasMarkers,
  markOf,
  mergeEdited,
  readEdited,
  withMarkers,
} from '../core/account/forms/sections.ts';
import { showHtml } from '../core/account/forms/html.ts';
import { showText } from '../core/account/forms/plain-text.ts';
import type { Written } from '../core/account/account.ts';
import { StoreError, type Files } from '../store/files.ts';
import { makeOwnFolder } from '../store/folder.ts';
import { writeWhole } from '../store/whole-file.ts';

/** The forms an account comes in, and what their files end in. */
export const accountForms = { md: '.md', html: '.html', text: '.txt' } as const;
export type AccountForm = keyof typeof accountForms;

/** What lies in the folder of pictures, by file name. */
export type Pictured = ReadonlyMap<string, string | Uint8Array>;

/** The account as a page: pictures and photos inside. */
export function pageOf({ blocks }: Written, folder: string, pictured: Pictured): string {
  const text = showHtml(blocks, (file) => {
    const name = file.startsWith(`${folder}/`) ? file.slice(folder.length + 1) : file;
    const content = pictured.get(name);
    return content === undefined ? undefined : dataAddress(name, content);
  });
  return `${text}<!-- droplight ${markOf(text)} -->\n`;
}

/** The account as bare text; its last line tells an edit from none. */
export function textOf({ blocks }: Written): string {
  const text = showText(blocks);
  return `${text}\n[droplight ${markOf(text)}]\n`;
}

/** A picture as an address that holds it; what a name ends in is one of the kinds we keep. */
function dataAddress(name: string, content: string | Uint8Array): string {
  const ending = name.split('.').at(-1) ?? '';
  const kind = { svg: 'svg+xml', jpg: 'jpeg' }[ending] ?? ending;
  return `data:image/${kind};base64,${Buffer.from(content).toString('base64')}`;
}

/** What was done about an account that stood there already. */
export type Kept = {
  readonly kept: readonly string[];
  readonly stale: readonly string[];
  readonly dropped: readonly string[];
};
export const nothingKept: Kept = { kept: [], stale: [], dropped: [] };

/** An account as it is to be written, with what its writer edited in the one that stands there. */
export function withEdits(
  files: Files,
  path: string,
  written: Written,
): { readonly text: string } & Kept {
  const fresh = freshOf(written.frontMatter, written.markdown);
  const there = standing(files, path);
  if (there === undefined || !hasMarkers(there))
    return { text: withMarkers(fresh), ...nothingKept };
  const edited = readEdited(there);
  if (edited.kind === 'damaged')
    throw new StoreError(
      'edited-outside',
      `The account there was changed where that cannot be kept: ${edited.what} (line ${edited.line}).`,
      'Choose another folder with --out, or say --force to write all of it anew.',
      { path },
    );
  const merged = mergeEdited(fresh, edited);
  // The writer's own line ends stay.
  return there.includes('\r\n')
    ? { ...merged, text: merged.text.replaceAll('\n', '\r\n') }
    : merged;
}

const standing = (files: Files, path: string): string | undefined =>
  files.exists(path) ? new TextDecoder().decode(files.read(path)) : undefined;

/** How we know a file as one of ours: an account by its last line, a picture by its first. */
const signatures = {
  // One of an earlier version has no marker, and ends in the link of its record.
  account: (text: string) =>
    hasMarkers(text) || /The record's closing link is [0-9a-f]*\.\n$/.test(text),
  picture: (text: string) => /^<svg xmlns="[^"]*" class="droplight" /.test(text),
} as const;

export function refuseOthers(files: Files, path: string, kind: keyof typeof signatures): void {
  const there = standing(files, path);
  if (there !== undefined && !signatures[kind](there)) throw notOurs(path, kind);
}

/** A page or a bare text is written whole: one that somebody edited is not written over. */
export function refuseEdited(files: Files, path: string): void {
  const there = standing(files, path)?.replaceAll('\r\n', '\n');
  if (there === undefined) return;
  const [, text, mark] =
    /^([\s\S]*?)\n?(?:<!-- droplight |\[droplight )([0-9a-f]{8})(?: -->|\])\n$/.exec(there) ?? [];
  if (text === undefined || mark === undefined) throw notOurs(path, 'account');
  if (mark === markOf(text) || mark === markOf(`${text}\n`)) return;
  throw new StoreError(
    'edited',
    'The account there was edited, and this form is written as a whole.',
    'Choose another folder with --out, or say --force to write it anew; markdown keeps what you edit.',
    { path },
  );
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

/** A drawing as PNG: it has nothing of ours in it but its name, and what is no PNG is not ours. */
const drawing = /(?:^|[\\/])(?:way|suspects|feed)(?:-\d+)?\.png$/;

function refuseNoPng(files: Files, path: string): void {
  const there = files.exists(path) ? files.read(path) : undefined;
  if (there !== undefined && (there[0] !== 137 || there[1] !== 80)) throw notOurs(path, 'picture');
}

/** Contents by where they go. */
const inFolder = <Content>(
  folder: string,
  named: Iterable<readonly [name: string, content: Content]>,
): readonly (readonly [path: string, content: Content])[] =>
  Array.from(named, ([name, content]) => [join(folder, name), content] as const);

type Forced = { readonly force?: boolean };

/** A form that is written as a whole, unless somebody edited the one that is there. */
export function writeWholeForm(files: Files, path: string, text: string, { force }: Forced): Kept {
  if (force !== true) refuseEdited(files, path);
  writeWhole(files, path, text);
  return nothingKept;
}

export function writePictures(
  files: Files,
  folder: string,
  pictured: Pictured,
  { force }: Forced,
): void {
  const all = inFolder(folder, pictured);
  if (force !== true)
    for (const [picture, content] of all)
      if (typeof content === 'string') refuseOthers(files, picture, 'picture');
      else if (drawing.test(picture)) refuseNoPng(files, picture);
      else refuseOtherBytes(files, picture, content);
  if (all.length > 0) makeOwnFolder(files, folder);
  for (const [picture, content] of all) writeWhole(files, picture, content);
}
