import { basename, dirname, join } from 'node:path';
import { good, problemsOf, showProblem, showRoots, type Problem } from '../../core/problem.ts';
import { checkTree, type Checked } from '../../core/reason/plan/check-tree.ts';
import { showDoubt } from '../../core/reason/plan/soundness.ts';
import { cleanLine, cleanRow, count } from '../../core/text.ts';
import { placed } from '../../core/tree/json/place.ts';
import { lintLibrary, type TreeFile } from '../../core/tree/lint/shared.ts';
import type { Shop } from '../../core/tree/shop.ts';
import type { Files } from '../../store/files.ts';
import { loadLibrary, loadShops, readText } from '../../store/library.ts';
import { isTreeFile, shopFile } from '../../store/headings.ts';
import { nothingIn, wrongEndings, wrongNames } from './file-names.ts';
import { printJson, type Ended, type Io } from '../io.ts';
import { absolute, treesFolder, type Given } from '../options.ts';
import { teller } from '../program/progress.ts';

type CheckedFile = Checked & { readonly file: string };

/** `droplight trees check [FILES] [--doubts] [--json]`: all that is wrong with them, a line each. */
export function checkTrees(io: Io, given: Given, words: readonly string[]): Ended {
  const folder = treesFolder(io, given);
  const { files } = io.disk;
  const named = words.map((word) => absolute(io, word));
  const [own, paths] = named.length > 0 ? parted(named) : [[], treeFilesIn(files, folder)];
  const library = loadLibrary(files, { folder, shipped: io.folders.shipped });
  const shops = makeShops(io, folder);
  const texts = paths.map((path) => readText(files, path));
  const trees = [...library.trees.map(({ id }) => id), ...texts.flatMap(idOf)];
  const waiting = teller(io, 'Checking trees');
  const checked = paths.map((file, index): CheckedFile => {
    waiting.tell({ done: index, of: paths.length });
    const text = texts[index];
    if (text === undefined || text.kind === 'bad')
      return { file, tree: undefined, problems: text?.problems ?? [], doubts: [] };
    return { file, ...checkTree(text.value, { file, shop: shops.at(dirname(file)), trees }) };
  });
  waiting.end();
  const sound = checked.flatMap(({ file, tree }) => (tree === undefined ? [] : [{ file, tree }]));
  const others = named.length > 0 ? library.trees.map((tree) => ({ file: tree.id, tree })) : [];
  const around = named.length > 0 ? named : [join(folder, shopFile)];
  const inPlace = (problem: Problem): readonly Problem[] => {
    const text = texts[paths.indexOf(problem.file ?? '')];
    return text?.kind === 'good' ? placed(text.value, [problem]) : [problem];
  };
  const problems = [
    ...(paths.length + own.length === 0 ? [nothingIn(folder)] : []),
    ...wrongEndings(
      named.length > 0 ? named : files.list(folder).map((name) => join(folder, name)),
    ),
    ...own.flatMap((path) => problemsOf(readText(files, path))),
    ...shops.problems(around),
    ...checked.flatMap((one) => one.problems),
    ...[...wrongNames(sound), ...shared(sound, others)].flatMap(inPlace),
  ];
  tell(io, given, { checked, shops: own.length, problems });
  if (problems.some(({ code }) => /^E[A-Z]+$/.test(code))) return good(3);
  return good(problems.length > 0 ? 1 : 0);
}

const treeFilesIn = (files: Files, folder: string): readonly string[] =>
  files
    .list(folder)
    .filter(isTreeFile)
    .map((name) => join(folder, name));

/** The shops among the files named, and the trees. */
const parted = (paths: readonly string[]): readonly [readonly string[], readonly string[]] => [
  paths.filter((path) => basename(path) === shopFile),
  paths.filter((path) => basename(path) !== shopFile),
];

/** What the checked files have against one another, and against the trees of the library. */
function shared(sound: readonly TreeFile[], library: readonly TreeFile[]): readonly Problem[] {
  const ids = sound.map(({ tree }) => tree.id);
  const others = library.filter(({ tree }) => !ids.includes(tree.id));
  const files = sound.map(({ file }) => file);
  return lintLibrary([...others, ...sound]).filter(({ file = '' }) => files.includes(file));
}

/** The library's shop with what the folder of trees and the one around a file add; each is read once. */
function makeShops(io: Io, folder: string) {
  const known = new Map<string, ReturnType<typeof loadShops>>();
  const load = (from: string) => {
    const loaded = known.get(from) ?? loadShops(io.disk.files, [io.folders.shipped, folder, from]);
    known.set(from, loaded);
    return loaded;
  };
  return {
    at: (from: string): Shop | undefined => {
      const { whole, shop } = load(from);
      return whole ? shop : undefined;
    },
    /** Of the shops around these files, each problem once. */
    problems: (paths: readonly string[]): readonly Problem[] => {
      const all = paths.flatMap((path) => load(dirname(path)).problems);
      return [...new Map(all.map((one) => [showProblem(one), one])).values()];
    },
  };
}

/** The id that a text gives its tree, so that others may lead to it; wrong ones are told elsewhere. */
function idOf(text: ReturnType<typeof readText>): readonly string[] {
  const found =
    text.kind === 'good' ? /"id"\s*:\s*"([a-z0-9-]+)"/.exec(text.value)?.[1] : undefined;
  return found === undefined ? [] : [found];
}

type Told = {
  readonly checked: readonly CheckedFile[];
  /** How many shops were named. */
  readonly shops: number;
  readonly problems: readonly Problem[];
};

function tell(io: Io, given: Given, { checked, shops, problems }: Told): void {
  if (given.flag('json')) {
    const doubts = checked.flatMap(({ file, doubts: all }) =>
      all.map((doubt) => ({ file, ...doubt })),
    );
    printJson(io, { problems, doubts });
    return;
  }
  for (const line of problemLines(problems)) io.out(`${cleanRow(line)}\n`);
  if (given.flag('doubts'))
    for (const { tree, doubts } of checked)
      for (const doubt of tree === undefined ? [] : doubts)
        io.out(`${cleanLine(tree === undefined ? '' : showDoubt(tree, doubt))}\n`);
  if (problems.length === 0)
    io.out(`${filesWords(checked.length, shops)} checked, nothing is wrong.\n`);
  else {
    const roots = problems.filter(({ follows }) => follows === undefined).length;
    io.err(`${count(roots, 'problem')} in ${count(checked.length + shops, 'file')}.\n`);
  }
}

/** Each file once, and below it a line for each of its problems that follows from no other. */
function problemLines(problems: readonly Problem[]): readonly string[] {
  const files = Map.groupBy(problems, ({ file = '' }) => file);
  return [...files].flatMap(([file, own]) => [
    cleanLine(file),
    ...showRoots(own.map(({ file: _, ...problem }) => problem)).map(
      (line) => `  ${cleanLine(line)}`,
    ),
  ]);
}

function filesWords(trees: number, shops: number): string {
  if (shops === 0) return count(trees, 'tree');
  return trees === 0 ? count(shops, 'shop') : `${count(trees, 'tree')} and ${count(shops, 'shop')}`;
}
