import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { maxPicture, readPicture, tooBig, type PictureKind } from '../core/picture/picture.ts';
import { bad, good, type Parsed } from '../core/problem.ts';
import {
  liesBeside,
  photoFolder,
  photoName,
  type KeptPhoto,
} from '../core/session/record/photo.ts';
import { meantPaths } from './dropped-path.ts';
import { attempt, StoreError, type Files } from './files.ts';
import { sessionName } from './find.ts';
import { makeOwnFolder, wholePath, type PathRoots } from './folder.ts';
import { writeWhole } from './whole-file.ts';

/** A picture in memory, known by its own bytes. */
export type Picture = { readonly kind: PictureKind; readonly bytes: Uint8Array };

/**
 * Reads the photo that a person means by what they typed, pasted or dropped: a regular file whose
 * bytes are those of a whole picture, 20 MB at most. A link is followed only within its folder.
 */
export function loadPhoto(files: Files, typed: string, roots: PathRoots): Parsed<Picture> {
  const paths = meantPaths(typed).map((path) => wholePath(path, roots));
  const path = paths.find((one) => files.placeAt(one) !== undefined);
  if (path === undefined) return bad({ ...noPhoto, value: typed });
  const bytes = attempt(path, () => readAt(files, path));
  return bytes.kind === 'bad' ? bytes : pictureOf(bytes.value);
}

const noPhoto = {
  code: 'photo-missing',
  message: 'There is no file at this path.',
  mend: 'Type it from the root, or from where the program was started; or drop the file here.',
};

function readAt(files: Files, path: string): Uint8Array {
  const leads = files.realPath(path);
  if (dirname(leads) !== files.realPath(dirname(path)))
    throw new StoreError(
      'photo-link',
      'This is a link that leads out of its folder.',
      'Name the photo itself.',
      { path },
    );
  const { kind, size } = files.placeAt(leads) ?? { kind: 'other', size: 0 };
  if (kind !== 'file')
    throw new StoreError(
      'photo-no-file',
      kind === 'folder' ? 'This is a folder.' : 'This is a pipe or a device, not a file.',
      'Name a photo.',
      { path },
    );
  if (size > maxPicture)
    throw new StoreError(tooBig().code, tooBig().message, tooBig().mend, { path });
  return files.read(leads);
}

/** Bytes that were read or sent as a picture, or why they are none. */
export function pictureOf(bytes: Uint8Array): Parsed<Picture> {
  const kind = readPicture(bytes);
  return kind.kind === 'bad' ? kind : good({ kind: kind.value, bytes });
}

/**
 * Copies a picture beside its session, whole and synced, under a name that is not taken.
 * @param session path of the session's file
 * @throws StoreError when the disk refuses; then nothing of it stands under that name
 */
export function keepPhoto(
  files: Files,
  session: string,
  { kind, bytes }: Picture,
  caption: string,
): KeptPhoto {
  const folder = photoFolder(sessionName(session));
  const place = join(dirname(session), folder);
  makeOwnFolder(files, place);
  const name = photoName(caption, kind, files.list(place));
  writeWhole(files, join(place, name), bytes);
  return { file: `${folder}/${name}`, sha256: hashOf(bytes), bytes: bytes.length };
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** What has become of a photo that a record tells of. */
export type FoundPhoto =
  | { readonly kind: 'there'; readonly picture: Picture }
  /** No file, or none that can be read. */
  | { readonly kind: 'missing' }
  /** Other bytes than were kept, or no picture any more. */
  | { readonly kind: 'changed' };

/**
 * Looks for a photo beside its session: where the record says, or in the folder of the session's
 * name as it is now.
 * @param session path of the session's file
 */
export function findPhoto(
  files: Files,
  session: string,
  { file, sha256 }: Pick<KeptPhoto, 'file'> & { readonly sha256?: string | undefined },
): FoundPhoto {
  if (!liesBeside(file)) return { kind: 'missing' };
  const folder = dirname(session);
  const moved = join(photoFolder(sessionName(session)), basename(file));
  const path = [file, moved]
    .map((one) => join(folder, one))
    .find((one) => isOwnFile(files, folder, one));
  if (path === undefined) return { kind: 'missing' };
  const read = attempt(path, () =>
    files.sizeOf(path) > maxPicture ? undefined : files.read(path),
  );
  if (read.kind === 'bad') return { kind: 'missing' };
  const picture = read.value === undefined ? undefined : pictureOf(read.value);
  return picture?.kind === 'good' &&
    (sha256 === undefined || sha256 === hashOf(picture.value.bytes))
    ? { kind: 'there', picture: picture.value }
    : { kind: 'changed' };
}

/** A file in the session's folder or in one below it; no link in its place, nor in that of the folder below. */
const isOwnFile = (files: Files, folder: string, path: string): boolean =>
  files.placeAt(path)?.kind === 'file' &&
  (dirname(path) === folder || files.placeAt(dirname(path))?.kind === 'folder');

/**
 * Reads the photo of an action and copies it beside the session.
 * @param session path of the session's file
 */
export function takePhoto(
  files: Files,
  session: string,
  { file, caption = '' }: { readonly file: string; readonly caption?: string | undefined },
  roots: PathRoots,
): Parsed<KeptPhoto> {
  const picture = loadPhoto(files, file, roots);
  if (picture.kind === 'bad') return picture;
  return attempt(session, () => keepPhoto(files, session, picture.value, caption));
}

/** Takes away a photo that did not come into the record. */
export function discardPhoto(files: Files, session: string, { file }: KeptPhoto): void {
  const path = join(dirname(session), file);
  attempt(path, () => files.remove(path));
}
