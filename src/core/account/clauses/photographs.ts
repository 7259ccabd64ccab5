import type { PayloadOf } from '../../session/event.ts';
import type { AccountContext } from '../context.ts';
import { asClause } from '../words/wording.ts';
import { plain, type Clause } from './clause.ts';

const unnoted = 'what it shows was not noted';

/** A photo where it was taken: shown with its caption, or told with why it is not. */
export function photographClause(
  { folder, photos }: Pick<AccountContext, 'folder' | 'photos'>,
  n: number,
  { caption }: Pick<PayloadOf<'photographed'>, 'caption'>,
): Omit<Clause, 'n' | 'at'> {
  const words = caption.trim();
  const photo = photos.get(n);
  const told = `a photograph was taken${words === '' ? `; ${unnoted}` : `: ${asClause(words)}`}`;
  if (photo === undefined) return plain(told);
  if (photo.kind !== 'there') return plain(`${told} (${lost[photo.kind]})`);
  if (folder === undefined) return plain(told);
  return {
    ...plain(told),
    picture: {
      kind: 'picture',
      file: `${folder}/${photo.file}`,
      caption: words === '' ? `A photograph; ${unnoted}` : words,
    },
  };
}

const lost = {
  missing: 'its file is missing beside the record',
  changed: 'its file beside the record is not the one that was kept, and is not shown',
} as const;
