import { bad, good, type Parsed } from '../../core/problem.ts';
import { hideFault, saltOf } from '../../core/reason/practice/hide.ts';
import { commitmentOf } from '../../core/session/practice/secret.ts';
import { cleanRow, count } from '../../core/text.ts';
import { attempt } from '../../store/files.ts';
import { newSeed } from '../../store/practice.ts';
import { sha256 } from '../../store/recover.ts';
import { writeWhole } from '../../store/whole-file.ts';
import { done, type Ended, type Io } from '../io.ts';
import { absolute, readOptions, wrongUse, type Given } from '../options.ts';
import { callOf, uses } from '../uses.ts';
import { groundFor, type Ground } from './ground.ts';
import { markOf, type SetFile } from './set-file.ts';

/** `droplight practice set TREE --count N --out FILE`: faults for a class, the same for everybody. */
export async function makeSet(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.practice.options);
  if (given.kind === 'bad') return given;
  const set = setFor(io, given.value);
  if (set.kind === 'bad') return set;
  const path = absolute(io, given.value.text('out') ?? '');
  if (io.disk.files.placeAt(path) !== undefined) return bad(fileThere(path));
  const written = attempt(path, () =>
    writeWhole(io.disk.files, path, `${JSON.stringify(set.value, null, 2)}\n`),
  );
  if (written.kind === 'bad') return written;
  io.out(`${cleanRow(path)}: ${count(set.value.faults.length, 'fault')} of ${set.value.tree}\n`);
  return done;
}

const fileThere = (file: string) => ({
  code: 'file-there',
  file,
  message: 'There is such a file already; a set is never written over one.',
  mend: 'Give another name with --out.',
});

function setFor(io: Io, given: Given): Parsed<SetFile> {
  const [word, ...more] = given.words;
  const many = Number(given.text('count') ?? Number.NaN);
  if (word === undefined || more.length > 0 || given.text('out') === undefined)
    return wrongUse('A set wants one tree, --count N and --out FILE.', callOf('practice'));
  if (!Number.isInteger(many) || many < 1 || many > 999)
    return wrongUse('--count is a number from 1 to 999.', callOf('practice'));
  const ground = groundFor(io, given, word, given.text('facts') ?? '');
  return ground.kind === 'bad' ? ground : drawn(given, ground.value, many);
}

function drawn(given: Given, { tree, walked }: Ground, many: number): Parsed<SetFile> {
  const hard = given.flag('hard');
  const faults = [];
  for (let made = 0; made < many; made += 1) {
    const seed = newSeed();
    const secret = hideFault(walked, { salt: saltOf(seed, tree.id, sha256), hard, causes: [] });
    if (secret.kind === 'bad') return secret;
    faults.push({ seed, commitment: commitmentOf(secret.value, sha256) });
  }
  const name = given.text('name') ?? `${tree.id}, ${count(many, 'fault')}`;
  const format = 'droplight practice set 1' as const;
  const facts = given.text('facts') ?? '';
  return good({ format, name, tree: tree.id, hard, mark: markOf(tree), facts, faults });
}
