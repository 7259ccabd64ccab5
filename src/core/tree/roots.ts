import type { Problem } from '../problem.ts';

/**
 * Puts the problems of one file into the file's order, and marks each that only follows from another
 * by the place of that one (`follows`): mending the root may mend it too, so it is counted, not listed.
 */
export function rooted(problems: readonly Problem[]): Problem[] {
  const ordered = problems.toSorted(
    (one, other) => (one.line ?? 0) - (other.line ?? 0) || (one.column ?? 0) - (other.column ?? 0),
  );
  const around = aroundOf(ordered);
  const marked = ordered.map((problem) => {
    const root = rootOf(problem, around);
    return root === undefined ? problem : { ...problem, follows: root.path ?? '' };
  });
  const follows = (problem: Problem): boolean => problem.follows !== undefined;
  return [...marked.filter((one) => !follows(one)), ...marked.filter(follows)];
}

/** The problems of a file by what others may follow from: a file can have tens of thousands. */
type Around = {
  /** Those of one kin, and those of one code in one block, in the file's order. */
  readonly kin: ReadonlyMap<string, readonly Problem[]>;
  readonly siblings: ReadonlyMap<string, readonly Problem[]>;
  /** Those in places that the way hangs on, with numbers that weigh the causes, and the latter by check. */
  readonly ways: readonly Problem[];
  readonly weighing: readonly Problem[];
  readonly weighingIn: ReadonlyMap<string, readonly Problem[]>;
};

function aroundOf(ordered: readonly Problem[]): Around {
  const weighing = ordered.filter(({ path = '' }) => weights.test(path));
  return {
    kin: groupedBy(ordered, kinOf),
    siblings: groupedBy(ordered, siblingsOf),
    ways: ordered.filter(({ path = '' }) => wayPlaces.test(path)),
    weighing,
    weighingIn: groupedBy(weighing, checkOf),
  };
}

function groupedBy(
  problems: readonly Problem[],
  keyOf: (problem: Problem) => string | undefined,
): ReadonlyMap<string, readonly Problem[]> {
  const groups = new Map<string, Problem[]>();
  for (const problem of problems) {
    const key = keyOf(problem);
    if (key === undefined) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [problem]);
    else group.push(problem);
  }
  return groups;
}

const groupOf = (groups: Around['kin'], key: string | undefined): readonly Problem[] =>
  key === undefined ? [] : (groups.get(key) ?? []);

/** What a problem follows from: one that it rests on, else the first of its kind. */
function rootOf(problem: Problem, around: Around): Problem | undefined {
  const below = restsOn(problem, around);
  if (below !== undefined) return rootOf(below, around) ?? below;
  const alike = groupOf(around.kin, kinOf(problem));
  const siblings = groupOf(around.siblings, siblingsOf(problem));
  const first = alike.length > 1 ? alike[0] : siblings.length > most ? siblings[0] : undefined;
  return first === problem ? undefined : first;
}

/** As many problems of one code in one block are told one by one. */
const most = 3;

const kinOf = ({ code, value, kin }: Problem): string | undefined =>
  kin ?? (code.startsWith('unknown-') ? `${code} ${value ?? ''}` : undefined);

const ownerOf = ({ path = '' }: Problem): string => path.replace(/(\.[^.[]+|\[\d+\])$/, '');

const siblingsOf = (problem: Problem): string | undefined =>
  problem.code === 'wrong-shape' ? undefined : `${problem.code} ${ownerOf(problem)}`;

const checkOf = ({ path = '' }: Problem): string | undefined => /^checks\.[^.]+/.exec(path)?.[0];

/** What must be right before a thing can be judged: shape, then names and rows, then rows together, then the way. */
const levels: readonly (readonly [level: number, codes: RegExp])[] = [
  [0, /^(wrong-shape|key-twice|reserved-name|needs-format-two)$/],
  [
    1,
    /^(unknown-|result-twice|row-(length|sum)|no-background|plausible-range|odds-scale|dead-end|feed-)/,
  ],
  [2, /^(row-|band-|background-small)/],
  [3, /^(unreachable-|loop)/],
  [4, /^(condemns-wrongly|check-tells-nothing)/],
];

/** Texts and cautions stand on nothing, and nothing on them. */
const alone = 9;

const levelOf = ({ code }: Pick<Problem, 'code'>): number =>
  levels.find(([, codes]) => codes.test(code))?.[0] ?? alone;

/** Places that the way of a tree hangs on. */
const wayPlaces =
  /^(start|baseline|complaint|safeguards)\b|\.(next|go|after|results)\b|^(causes|checks|branches)\.[^.]+$/;

/** Places with the numbers that weigh the causes. */
const weights =
  /(^|\.)(odds|unlisted|background|points|sound|shows-with|results|limits|reading)\b|^causes$/;

/** The first problem that must be mended before this one can be judged. */
function restsOn(problem: Problem, around: Around): Problem | undefined {
  const { code, path = '' } = problem;
  const level = levelOf(problem);
  const isBelow = (one: Problem): boolean => levelOf(one) < level;
  if (code.startsWith('unreachable-') || code === 'loop') return around.ways.find(isBelow);
  // Where a check is called "stop", what leads to it seems to end.
  if (code === 'no-reason')
    return around.ways.find(({ value, kin }) => kin === `reserved ${value}`);
  if (level === 4) return around.weighing.find(isBelow);
  const check = checkOf(problem);
  if (check === undefined || level > 2) return undefined;
  return groupOf(around.weighingIn, check).find((one) => {
    const place = one.path ?? '';
    const isIn = place.startsWith(`${check}.`) && !place.endsWith('.next');
    return isIn && touchesRow(path, place) && isBelow(one);
  });
}

/** Whether a row, or what all rows of its check stand on, is the place that is wrong. */
const touchesRow = (row: string, place: string): boolean =>
  !place.includes('.points.') || place.startsWith(row) || row.startsWith(place);
