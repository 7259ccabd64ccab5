import type { Problem, Tell } from '../../problem.ts';
import { lintBands } from './bands.ts';
import { lintByFacts } from './by-facts.ts';
import { lintComplaint } from './complaint.ts';
import { lintHazards } from './hazards.ts';
import { lintHidden } from './hidden.ts';
import { lintRepairs } from './repairs.ts';
import { lintResults } from './results.ts';
import { lintRings } from './rings.ts';
import { lintOdds, lintRows } from './rows.ts';
import { lintSame } from './shared.ts';
import { lintSizes } from './sizes.ts';
import { lintStanding } from './standing.ts';
import { lintSwitches } from './switches.ts';
import { lintTold } from './told.ts';
import { lintTexts } from './texts.ts';
import { lintTriage } from './triage.ts';
import { atBlocks } from '../written/check-branches.ts';
import { lintEnds, lintLoops, lintOnward, lintReach } from './way.ts';
import type { Tree } from '../model.ts';

/**
 * Everything that one tree file alone shows to be unsound, beyond what would make it unusable:
 * the way, the texts, the cautions, the numbers. All at once.
 * @param trees ids of the library's trees; left out, `tree:ID` is not looked up
 */
export function lintTree(tree: Tree, file: string, trees?: readonly string[]): Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (problem) => problems.push({ ...problem, file });
  lintEnds(tree, tell, trees);
  lintOnward(tree, tell, trees);
  lintReach(tree, tell);
  lintLoops(tree, tell);
  lintOdds(tree, tell);
  lintSame(tree, tell);
  lintComplaint(tree, tell);
  lintRings(tree, tell);
  lintByFacts(tree, tell);
  lintRepairs(tree, tell);
  return atBlocks(tree.written, [...problems, ...lintParts(tree, file)]);
}

/** What each check and each cause shows by itself, however the way leads through them. */
export function lintParts(tree: Tree, file: string): Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (problem) => problems.push({ ...problem, file });
  lintTexts(tree, tell);
  lintTold(tree, tell);
  lintTriage(tree, tell);
  lintHazards(tree, tell);
  lintRows(tree, tell);
  lintHidden(tree, tell);
  lintResults(tree, tell);
  lintBands(tree, tell);
  lintStanding(tree, tell);
  lintSwitches(tree, tell);
  lintSizes(tree, tell);
  return atBlocks(tree.written, problems);
}
