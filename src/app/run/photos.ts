import { firstOf } from '../../core/problem.ts';
import type { Files } from '../../store/files.ts';
import type { PathRoots } from '../../store/folder.ts';
import { takePhoto } from '../../store/photos.ts';
import type { Effect } from '../effect.ts';
import type { Program } from '../program.ts';

/** Where photos come from and go to; `session` is the path of the open one. */
export type Album = {
  readonly files: Files;
  readonly roots: PathRoots;
  readonly session: string | undefined;
};

/** Copies the photo of an action beside the open session; only then the action is taken. */
export function keepPhotoOf(
  { action }: Extract<Effect, { kind: 'keep-photo' }>,
  { files, roots, session }: Album,
  { dispatch }: Program,
): void {
  if (session === undefined) throw new Error('a photo is kept beside an open session');
  const photo = takePhoto(files, session, action, roots);
  dispatch(
    photo.kind === 'good'
      ? { kind: 'photo-kept', action, photo: photo.value }
      : { kind: 'failed', problem: firstOf(photo.problems) },
  );
}
