import { currentLeg, type Proof, type Repaired, type Standpoint } from './story.ts';

type Told = Pick<Standpoint, 'legs' | 'repairs' | 'proofs'>;

/**
 * What came since the tree that is walked now was begun: another complaint's repairs prove nothing here.
 * Lists of a story are in the order of their events, so most often it is the whole list.
 */
export const sinceLeg = <T extends { readonly n: number }>(
  story: Pick<Standpoint, 'legs'>,
  list: readonly T[],
): readonly T[] => {
  const { since } = currentLeg(story);
  const [first] = list;
  return first === undefined || first.n > since ? list : list.filter(({ n }) => n > since);
};

export const lastRepair = (story: Told): Repaired | undefined =>
  sinceLeg(story, story.repairs).at(-1);

/** The proofs that have followed the last repair, in order. */
export function proofsOfRepair(story: Told): readonly Proof[] {
  const repair = lastRepair(story);
  return repair === undefined ? [] : story.proofs.filter(({ n }) => n > repair.n);
}

/**
 * Whether the complaint is proven gone: after the last repair its own test has shown good, and for
 * a complaint that comes and goes as many times in a row as the tree asks for.
 */
export function isProven(story: Told): boolean {
  const { tries } = currentLeg(story).tree.complaint;
  const last = proofsOfRepair(story).slice(-tries);
  return last.length === tries && last.every(({ good }) => good);
}

/** The same with one try more. */
export function isProvenBy(story: Told, { good }: Pick<Proof, 'good'>): boolean {
  const { tries } = currentLeg(story).tree.complaint;
  const before = proofsOfRepair(story).slice(1 - tries);
  return good && (tries === 1 || (before.length === tries - 1 && before.every((one) => one.good)));
}

/** Whether the last repair still waits for its proof, or for more good tries of it. */
export function awaitsProof(story: Told): boolean {
  const proofs = proofsOfRepair(story);
  return lastRepair(story) !== undefined && proofs.every(({ good }) => good) && !isProven(story);
}

/** The proof that the last repair failed, as long as nothing was answered since; else undefined. */
export function failedProof(story: Told & Pick<Standpoint, 'findings'>): Proof | undefined {
  const last = proofsOfRepair(story).at(-1);
  return last !== undefined && !last.good && story.findings.at(-1)?.n === last.n ? last : undefined;
}

/** How many of the good tries that a complaint asks for have come; undefined where none or all have. */
export function triesSoFar(story: Told): string | undefined {
  const { length } = proofsOfRepair(story);
  if (!awaitsProof(story) || length === 0) return undefined;
  const { tries } = currentLeg(story).tree.complaint;
  return `the complaint's own test has shown good ${length} of the ${tries} times in a row that are asked for`;
}
