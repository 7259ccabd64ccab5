import { feedProblems } from '../../feed/fill.ts';
import { lintFeed } from '../../feed/lint-feed.ts';
import type { Problem } from '../../problem.ts';
import { placed } from '../../tree/json/place.ts';
import { parseJson } from '../../tree/json/read.ts';
import { checkLinks } from '../../tree/links/links.ts';
import { lintParts, lintTree } from '../../tree/lint/lint.ts';
import type { Tree } from '../../tree/model.ts';
import { problemsBeside, shapeTree } from '../../tree/parse.ts';
import { atBlocks } from '../../tree/written/check-branches.ts';
import { rooted } from '../../tree/roots.ts';
import type { Shop } from '../../tree/shop.ts';
import { soundness } from './soundness.ts';
import type { Doubt } from './soundness.ts';

/** What is wrong with one tree file, from its text to its soundness. */
export type Checked = {
  /** Undefined where the file holds no tree that could be used. */
  readonly tree: Tree | undefined;
  readonly problems: readonly Problem[];
  readonly doubts: readonly Doubt[];
};

type Around = {
  readonly file: string;
  /** Undefined where it could not be read: names that it holds are then not looked up. */
  readonly shop: Shop | undefined;
  /** Ids of the library's trees. */
  readonly trees: readonly string[];
};

/** Holds a tree file against everything there is: shape, names, numbers, lint, feed path, soundness. */
export function checkTree(text: string, around: Around): Checked {
  const checked = checkText(text, around);
  return { ...checked, problems: rooted(placed(text, checked.problems)) };
}

function checkText(text: string, around: Around): Checked {
  const { file, shop, trees } = around;
  const json = parseJson(text, file);
  if (json.kind === 'bad') return { tree: undefined, problems: json.problems, doubts: [] };
  const shaped = shapeTree(json.value, file);
  if (shaped.kind === 'bad') {
    const beside = problemsBeside(json.value, (tree) => [
      ...checkLinks(tree, file, shop),
      ...lintParts(tree, file),
    ]);
    return { tree: undefined, problems: [...shaped.problems, ...beside], doubts: [] };
  }
  const tree = shaped.value;
  const broken = [...checkLinks(tree, file, shop), ...feedProblems(tree, file)];
  const lint = lintTree(tree, file, trees);
  if (broken.length > 0) return { tree: undefined, problems: [...broken, ...lint], doubts: [] };
  const circuit: Problem[] = [];
  lintFeed(tree, (problem) => circuit.push({ ...problem, file }));
  const { problems, doubts } = soundness(tree, file);
  return { tree, problems: [...lint, ...circuit, ...atBlocks(tree.written, problems)], doubts };
}
