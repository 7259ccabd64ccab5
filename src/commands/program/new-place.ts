import { dirname } from 'node:path';
import { cleanRow } from '../../core/text.ts';
import type { Io } from '../io.ts';
import { sessionsFolder, type Given } from '../options.ts';

/**
 * Asked before a job may begin; tells after it, once, where sessions are kept, when that place of
 * the system was made just now and nobody had named it. Else nothing.
 */
export function newPlace(io: Io, given: Given): () => string {
  const folder = sessionsFolder(io, given);
  const { files } = io.disk;
  const { sessions: usual, current } = io.folders;
  if (folder !== usual || dirname(folder) === current || files.exists(folder)) return () => '';
  return () =>
    files.exists(folder)
      ? `Jobs are kept in ${cleanRow(folder)}; the settings, or --sessions DIR, name another folder.\n`
      : '';
}
