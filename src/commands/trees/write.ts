import { basename, dirname } from 'node:path';
import wrapAnsi from 'wrap-ansi';
import { checkTree } from '../../core/reason/plan/check-tree.ts';
import { bad, firstOf, good, showRoots, type Parsed } from '../../core/problem.ts';
import { cleanLine } from '../../core/text.ts';
import { Id } from '../../core/tree/basics.ts';
import type { Shop } from '../../core/tree/shop.ts';
import { fileOfDraft } from '../../core/tree/writing/file.ts';
import {
  isBack,
  nextQuestion,
  standingAnswers,
  type Stand,
} from '../../core/tree/writing/next-question.ts';
import { readAnswer, type Question } from '../../core/tree/writing/question.ts';
import { soFar } from '../../core/tree/writing/so-far.ts';
import { printTree } from '../../core/tree/written/print.ts';
import { openAnswers, type Answers } from '../../store/answers.ts';
import { attempt } from '../../store/files.ts';
import { loadHeadings } from '../../store/headings.ts';
import { loadShops, readText } from '../../store/library.ts';
import { writeWhole } from '../../store/whole-file.ts';
import { done, type Ended, type Io } from '../io.ts';
import { rewriteTree } from './rewrite.ts';
import { absolute, treesFolder, wrongUse, type Given } from '../options.ts';

/** Columns that every terminal has. */
const width = 78;

const say = (io: Io, text: string, indent = ''): void => {
  const lines = wrapAnsi(cleanLine(text), width - indent.length).split('\n');
  for (const line of lines) io.out(`${indent}${line}\n`);
};

/**
 * `droplight trees write [FILE]`: asks its way to a tree, one line a question. Every answer is on
 * the disk, in FILE.answers, before the next question is asked.
 */
export async function writeTree(io: Io, given: Given, [word]: readonly string[]): Promise<Ended> {
  const path = absolute(io, (word ?? 'my-complaint').replace(/(\.json)?$/, '.json'));
  if (!Id.safeParse(basename(path, '.json')).success)
    return wrongUse(
      'The name of the file is the id of the tree: small letters, digits and hyphens.',
      'droplight trees write horn-silent.json',
    );
  const opened = openAnswers(io.disk.files, `${path}.answers`);
  if (opened.kind === 'bad') return opened;
  const folders = [io.folders.shipped, treesFolder(io, given), dirname(path)];
  const { shop } = loadShops(io.disk.files, folders);
  try {
    return await converse({ io, given, path, shop, answers: opened.value });
  } finally {
    opened.value.close();
  }
}

type Talk = {
  readonly io: Io;
  readonly given: Given;
  readonly path: string;
  readonly shop: Shop;
  readonly answers: Answers;
};

async function converse(talk: Talk): Promise<Ended> {
  const { io, path, shop, answers } = talk;
  let told = standingAnswers(answers.lines);
  const begun = nextQuestion(told, shop);
  if (begun.kind === 'bad')
    return bad({
      ...firstOf(begun.problems),
      code: 'answers-other',
      file: `${path}.answers`,
      mend: 'Mend that answer in the file, which holds one a line, or delete it from there on.',
    });
  let stand = begun.value;
  greet(talk, told.length);
  prompt(io, stand);
  for await (const given of io.lines()) {
    if (given.kind === 'bad') {
      const { message, mend } = firstOf(given.problems);
      say(io, `${message} ${mend}`);
      prompt(io, stand);
      continue;
    }
    const line = given.value;
    const word = line.trim().toLowerCase();
    if (word === '?' || word === 'so far') explain(io, word, stand);
    else if (stand.kind === 'whole' && !isBack(line)) {
      if (word === '') return finish(talk, stand);
      say(io, 'All is told. Enter writes the tree; "back" takes the last answer back.');
    } else {
      const taken = take(line, { ...talk, told, stand });
      if (taken.kind === 'good') told = taken.value;
      else if (taken.problems.some(({ code }) => code !== 'not-understood')) return taken;
      else {
        const { message, mend } = firstOf(taken.problems);
        say(io, `${message} ${mend}`);
      }
      const next = nextQuestion(told, shop);
      if (next.kind === 'bad') return next;
      stand = next.value;
    }
    prompt(io, stand);
  }
  io.out(`\nKept: ${told.length} answers. The same command goes on from here.\n`);
  return done;
}

function greet({ io, path }: Talk, kept: number): void {
  say(
    io,
    kept === 0
      ? `A tree is asked for, a line an answer, and kept in ${basename(path)}.answers as you go. Any time: "back" takes the last answer back, "so far" shows what stands, "?" explains. End with Ctrl+D; the same command goes on.`
      : `${kept} answers are kept. "back", "so far" and "?" work as before.`,
  );
}

type Turn = Talk & { readonly told: readonly string[]; readonly stand: Stand };

/** The answers with one more, or one fewer, kept on the disk; bad where the line is no answer. */
function take(line: string, { told, stand, answers, io }: Turn): Parsed<readonly string[]> {
  if (isBack(line) && told.length === 0) {
    say(io, 'Nothing is told yet.');
    return good(told);
  }
  if (!isBack(line) && stand.kind === 'asks') {
    const read = readAnswer(stand.question, line);
    if (read.kind === 'bad') return read;
  }
  const kept = answers.append(line);
  return kept.kind === 'bad' ? kept : good(standingAnswers([...told, line]));
}

function prompt(io: Io, stand: Stand): void {
  io.out('\n');
  if (stand.kind === 'whole') say(io, 'All is told. Enter writes the tree.');
  else ask(io, stand.question);
  io.out('> ');
}

function ask(io: Io, { list = [], text, offered, example }: Question): void {
  for (const line of list) say(io, line, '  ');
  say(io, text);
  if (offered !== undefined && offered !== '') say(io, `Enter: ${offered}`, '  ');
  else if (offered === undefined) say(io, `e.g. ${example}`, '  ');
}

function explain(io: Io, word: string, stand: Stand): void {
  if (word === 'so far') for (const line of soFar(stand.draft)) say(io, line, '  ');
  else if (stand.kind === 'asks') {
    say(io, stand.question.may, '  ');
    say(io, `e.g. ${stand.question.example}`, '  ');
  }
}

/** Writes the tree and tells what is still wrong with it. */
function finish(talk: Talk, { draft }: Stand): Ended {
  const { io, given, path, shop } = talk;
  const { files } = io.disk;
  const text = printTree(fileOfDraft(draft, basename(path, '.json')));
  const written = keepOld(talk, text);
  if (written.kind === 'bad') return written;
  const folder = treesFolder(io, given);
  const trees = loadHeadings(files, folder).headings.map(({ id }) => id);
  const { problems } = checkTree(text, { file: path, shop, trees });
  say(io, `Written: ${path}`);
  const roots = showRoots(problems.map(({ file: _, ...problem }) => problem));
  if (roots.length > 0) say(io, 'Still to be mended, in the file by an editor, or by "back" here:');
  for (const line of roots) say(io, line, '  ');
  say(
    io,
    `Read it back: droplight trees tell ${basename(path)}${roots.length > 0 ? '; hold it again: droplight trees check ' + basename(path) : ''}`,
  );
  return good(problems.length > 0 ? 1 : 0);
}

/** Puts the tree into its file; another text that stands there is kept beside it. */
function keepOld({ io, path }: Talk, text: string): Parsed<undefined> {
  const { files } = io.disk;
  const old = files.exists(path) ? readText(files, path) : undefined;
  if (old?.kind === 'bad') return old;
  if (old?.value === text) return good(undefined);
  if (old === undefined)
    return attempt(path, () => {
      writeWhole(files, path, text);
      return undefined;
    });
  const rewritten = rewriteTree(io, path, { old: old.value, text });
  return rewritten.kind === 'bad' ? rewritten : good(undefined);
}
