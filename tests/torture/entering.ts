import { readFileSync, rmSync } from 'node:fs';
import { enter } from '../../src/commands/enter.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { answers, begun } from '../helpers/begun.ts';
import { runCommand } from '../helpers/commands.ts';
import { readBack } from '../helpers/session-file.ts';
import { chance, driving, hostileText, pick, type Size, type Tried } from './lib.ts';
import { watch } from './watch.ts';

type Said = Record<string, unknown>;

/** An action as a person would give it, its text one of a kind. */
function fitting({ checks, causes }: Tree, random: () => number, text: string): Said {
  const [check, { results }] = pick(random, Object.entries(checks));
  const result = results.length > 0 ? pick(random, results).id : 'none';
  const [cause] = pick(random, Object.entries(causes));
  const n = 1 + Math.floor(random() * 30);
  return pick<Said>(random, [
    { do: 'note', text },
    { do: 'note', text, told: '2026-04-11T10:42+02:00' },
    { do: 'find', check, result, insist: true, acknowledged: true, despite: text },
    { do: 'find', check, reading: `${(random() * 15).toFixed(1)} V`, insist: true, despite: text },
    { do: 'begin', check, acknowledged: true, brought: true, despite: text },
    { do: 'skip', check, reason: text },
    { do: 'condemn', cause, text, acknowledged: true, despite: text },
    { do: 'repair', cause, text, minutes: 5, acknowledged: true, despite: text },
    { do: 'correct', n, withdraw: true, reason: text },
    { do: 'part-off', part: text },
    { do: 'follow-up', text },
    { do: 'timer', label: text, minutes: 2 },
    { do: 'conditions', temperature: `${Math.floor(random() * 100)}F` },
    { do: 'take-back' },
    { do: 'pause' },
    { do: 'close', as: 'given-up', text },
    { do: 'reopen' },
  ]);
}

/** One field put wrong: left out, made into something else, or added. */
function spoilt(said: Said, random: () => number): Said {
  const key = pick(random, Object.keys(said));
  const { [key]: _, ...rest } = said;
  const value = pick<unknown>(random, [
    hostileText(random),
    null,
    -1,
    1e308,
    [],
    {},
    random() * 1e9,
  ]);
  return pick<Said>(random, [
    rest,
    { ...said, [key]: value },
    { ...said, [hostileText(random)]: value },
  ]);
}

/** A line of any kind, and the text in it that is like no other. */
function lineFor(tree: Tree, random: () => number, tag: string): string {
  const chosen = random();
  if (chosen < 0.15) return hostileText(random);
  const said = fitting(tree, random, tag);
  const line = JSON.stringify(chosen < 0.6 ? said : spoilt(said, random));
  return chosen > 0.95 ? line.slice(0, Math.floor(random() * line.length)) : line;
}

/** Lines in one session: each that is ok stands in the record, and none that was refused. */
const perSession = 400;

/** What of the answers is not borne out by the record. */
function unborne(lines: readonly string[], out: string, file: Uint8Array): string[] {
  const { events = [], damage = ['it does not read'] } = readBack(file);
  const text = new TextDecoder().decode(file);
  const given = lines.filter((line) => line.trim() !== '');
  const told = answers(out);
  const wrong = damage.map((one) => `the record: ${one}`);
  if (told.length !== given.length) wrong.push(`${given.length} lines, ${told.length} answers`);
  told.forEach(({ ok, n = 0 }, at) => {
    const line = given[at] ?? '';
    const tag = /tag-\d+-/.exec(line)?.[0];
    if (ok && !events.includes(n)) wrong.push(`ok and not in the record: ${line}`);
    if (!ok && tag !== undefined && text.includes(tag)) wrong.push(`refused and kept: ${line}`);
  });
  return wrong;
}

/** Streams of lines to `enter`, good ones and spoilt ones: what it says of each is what the record holds. */
export async function entered({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  const slow: string[] = [];
  const { trees } = loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' });
  const tree = trees.find(({ id }) => id === 'no-supply');
  if (tree === undefined) throw new Error('the tree of the sessions is not there');
  let [ok, refused] = [0, 0];
  for (let tries = 0; tries < count;) {
    const { folder, path } = await begun();
    const lines = Array.from({ length: Math.min(perSession, count - tries) }, (_, at) =>
      lineFor(tree, random, `tag-${tries + at}-`),
    );
    tries += lines.length;
    const spent = watch();
    try {
      const { out, err } = await runCommand(enter, [path], { folder, lines });
      if (driving.test(out + err)) failures.push(`escape before line ${tries}`);
      ok += answers(out).filter((one) => one.ok).length;
      refused += answers(out).filter((one) => !one.ok).length;
      failures.push(...unborne(lines, out, readFileSync(path)));
    } catch (error) {
      failures.push(`crash before line ${tries}: ${String(error)}`);
    }
    if (spent() > lines.length) slow.push(`over 1 s a line before ${tries}`);
    rmSync(folder, { recursive: true });
  }
  if (ok < count / 10) failures.push(`only ${ok} lines were taken: nothing was tried`);
  return {
    attack: 'lines to enter',
    tries: count,
    failures,
    slow,
    seen: `${ok} ok, ${refused} refused`,
  };
}
