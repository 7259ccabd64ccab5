import type { Audience, Photos } from '../core/account/context.ts';
import { barePicture } from '../core/picture/picture.ts';
import type { Story } from '../core/session/story.ts';
import type { Files } from '../store/files.ts';
import { findPhoto } from '../store/photos.ts';

/** The photos of an account: what it says of each, and the copies that lie beside it by file name. */
export type AccountPhotos = {
  readonly told: Photos;
  readonly copies: ReadonlyMap<string, Uint8Array>;
};

/**
 * Looks for the photos of a session. A stranger gets copies without what the camera wrote into them,
 * the place among it; the files beside the session stay as they are. The number of its event names a
 * copy: it is the same photo each time.
 */
export function photosFor(
  files: Files,
  session: string,
  { photos }: Pick<Story, 'photos'>,
  audience: Audience | undefined,
): AccountPhotos {
  const told = new Map<number, { kind: 'there'; file: string } | { kind: 'missing' | 'changed' }>();
  const copies = new Map<string, Uint8Array>();
  for (const { n, file, sha256 } of photos) {
    const found = findPhoto(files, session, { file, sha256 });
    if (found.kind !== 'there') {
      told.set(n, found);
      continue;
    }
    const { kind, bytes } = found.picture;
    const name = `photo-${n}.${kind}`;
    told.set(n, { kind: 'there', file: name });
    copies.set(name, audience === 'reader' ? barePicture(bytes) : bytes);
  }
  return { told, copies };
}
