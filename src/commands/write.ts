import { basename, join } from 'node:path';
import { outline } from '../core/account/outline.ts';
import { showMarkdown } from '../core/account/markdown.ts';
import { fold } from '../core/session/fold.ts';
import { storeError, StoreError } from '../store/files.ts';
import type { Reading } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { writeWhole } from '../store/whole-file.ts';
import { fail, type ExitCode, type Io } from './io.ts';
import { absolute, firstOf, namedSession, readOptions } from './options.ts';

/** `droplight write SESSION [--out DIR]`: the account as markdown, the same bytes each time. */
export async function write(io: Io, args: readonly string[]): Promise<ExitCode> {
  const given = readOptions(args, { out: 'text', force: 'flag' });
  if (given.kind === 'bad') return fail(io, firstOf(given.problems));
  const path = namedSession(io, given.value, 'droplight write SESSION [--out DIR] [--force]');
  if (path.kind === 'bad') return fail(io, firstOf(path.problems));
  const out = given.value.text('out');
  try {
    const written = await writeAccount(io, path.value, {
      ...(out !== undefined && { out: absolute(io, out) }),
      force: given.value.flag('force'),
    });
    io.out(`${written}\n`);
    return 0;
  } catch (error) {
    const { code, path: at, message, mend } = storeError(error, path.value);
    return fail(io, { code, file: at, message, mend });
  }
}

type Where = { readonly out?: string; readonly force?: boolean };

/** The account's markdown for a session that has been read. */
export const accountOf = ({ header, events, blemishes, link }: Reading): string =>
  showMarkdown(
    outline(fold(header, events), { events: events.length, passedOver: blemishes.length, link }),
  );

/** Last line of every account: how we know a file as one of ours, to be written anew. */
const signature = /The record's closing link is [0-9a-f]{64}\.\n$/;

/**
 * Writes the account beside the session, or into a folder.
 * @returns the path of the file
 * @throws StoreError when the disk refuses, or a file stands there that is no account
 */
export async function writeAccount(io: Io, session: string, where: Where): Promise<string> {
  const { files } = io.disk;
  const loaded = loadSession(files, session);
  if (loaded.kind === 'bad') {
    const { code, message, mend } = firstOf(loaded.problems);
    throw new StoreError(code, message, mend, { path: session });
  }
  const name = `${basename(session).replace(/\.jsonl$/, '')}.md`;
  const path = join(where.out ?? join(session, '..'), name);
  if (where.out !== undefined) files.makeFolder(where.out);
  if (files.exists(path) && where.force !== true) {
    const there = new TextDecoder().decode(files.read(path));
    if (!signature.test(there))
      throw new StoreError(
        'not-ours',
        'The file there is no account that Droplight wrote.',
        'Choose another folder with --out, or say --force.',
        { path },
      );
  }
  writeWhole(files, path, accountOf(loaded.value));
  return path;
}
