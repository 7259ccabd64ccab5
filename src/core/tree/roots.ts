import type { Problem } from '../problem.ts';

/**
 * Puts the problems of one file into the file's order, and marks each that only follows from another
 * by the place of that one (`follows`): mending the root may mend it too, so it is counted, not listed.
 */
export function rooted(problems: readonly Problem[]): Problem[] {
  const ordered = problems.toSorted(
    (one, other) => (one.line ?? 0) - (other.line ?? 0) || (one.column ?? 0) - (other.column ?? 0),
  );
  const marked = ordered.map((problem) => {
    const root = rootOf(problem, ordered);
    return root === undefined ? problem : { ...problem, follows: root.path ?? '' };
  });
  const follows = (problem: Problem): boolean => problem.follows !== undefined;
  return [...marked.filter((one) => !follows(one)), ...marked.filter(follows)];
}

/** What a problem follows from: one that it rests on, else the first of its kind. */
function rootOf(problem: Problem, all: readonly Problem[]): Problem | undefined {
  const below = all.find((one) => levelOf(one) < levelOf(problem) && restsOn(problem, one));
  if (below !== undefined) return rootOf(below, all) ?? below;
  const alike = all.filter((one) => isKin(one, problem));
  const siblings = all.filter((one) => isSibling(one, problem));
  const first = alike.length > 1 ? alike[0] : siblings.length > most ? siblings[0] : undefined;
  return first === problem ? undefined : first;
}

/** As many problems of one code in one block are told one by one. */
const most = 3;

const kinOf = ({ code, value, kin }: Problem): string | undefined =>
  kin ?? (code.startsWith('unknown-') ? `${code} ${value ?? ''}` : undefined);

const isKin = (one: Problem, other: Problem): boolean =>
  one === other || (kinOf(one) !== undefined && kinOf(one) === kinOf(other));

const ownerOf = ({ path = '' }: Problem): string => path.replace(/(\.[^.[]+|\[\d+\])$/, '');

const isSibling = (one: Problem, other: Problem): boolean =>
  one === other ||
  (one.code === other.code && one.code !== 'wrong-shape' && ownerOf(one) === ownerOf(other));

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
  /^(start|baseline|complaint|safeguards)\b|\.(next|go|after|results)\b|^(causes|checks)\.[^.]+$/;

/** Places with the numbers that weigh the causes. */
const weights =
  /(^|\.)(odds|unlisted|background|points|sound|shows-with|results|limits|reading)\b|^causes$/;

function restsOn({ code, path = '' }: Problem, root: Problem): boolean {
  const place = root.path ?? '';
  if (code.startsWith('unreachable-') || code === 'loop') return wayPlaces.test(place);
  const level = levelOf({ code });
  if (level === 4) return weights.test(place);
  const check = /^checks\.[^.]+/.exec(path)?.[0];
  if (check === undefined || level > 2 || place.endsWith('.next')) return false;
  return place.startsWith(`${check}.`) && weights.test(place) && touchesRow(path, place);
}

/** Whether a row, or what all rows of its check stand on, is the place that is wrong. */
const touchesRow = (row: string, place: string): boolean =>
  !place.includes('.points.') || place.startsWith(row) || row.startsWith(place);
