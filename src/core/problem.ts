/**
 * Something wrong in data or in a request, told so that a person can mend it:
 * what, where (file, JSON path, line) and how to put it right. Never thrown.
 */
export type Problem = {
  /** Stable word for programs, the same whatever the message says. */
  readonly code: string;
  readonly message: string;
  readonly mend: string;
  readonly file?: string;
  /** JSON path of the value, such as `checks.lamps.results[1].next`. */
  readonly path?: string;
  /** Where in the text of the file, from 1; of a path that is not there, the nearest place around it. */
  readonly line?: number;
  readonly column?: number;
  /** The offending value as short text. */
  readonly value?: string;
  /** One word for all problems that one mistake makes. */
  readonly kin?: string;
  /** Path of the problem that this one only follows from; empty for one of the whole file. */
  readonly follows?: string;
};

/** Collects the problems of one file: every finder adds to one of these. */
export type Tell = (problem: Omit<Problem, 'file'>) => void;

/** Either the wanted value or every problem found on the way to it. */
export type Parsed<T> =
  | { readonly kind: 'good'; readonly value: T }
  | { readonly kind: 'bad'; readonly problems: readonly Problem[] };

export const good = <T>(value: T): Parsed<T> => ({ kind: 'good', value });
export const bad = (...problems: readonly Problem[]): Parsed<never> => ({ kind: 'bad', problems });

/** What is wrong with something, if anything is. */
export const problemsOf = (parsed: Parsed<unknown>): readonly Problem[] =>
  parsed.kind === 'bad' ? parsed.problems : [];

/** JSON path as people write it: `checks.lamps.results[1].next`. */
export function showPath(path: readonly PropertyKey[]): string {
  return path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');
}

/** A value short enough for one line. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  // JSON has no word for a number that is too large.
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/**
 * The value of something that was held against its rules before it came here.
 * @throws Error where it is bad all the same: that is a fault of this program
 */
export function trusted<T>(parsed: Parsed<T>): T {
  if (parsed.kind === 'bad') throw new Error(firstOf(parsed.problems).message);
  return parsed.value;
}

/** The problem that is told where there is room for one. */
export function firstOf(problems: readonly Problem[]): Problem {
  const [problem] = problems;
  if (problem === undefined) throw new Error('something went wrong without a problem');
  return problem;
}

/** One line for a person: where, what, how to mend it. */
export function showProblem(problem: Problem): string {
  const { file, line, column, path } = problem;
  const inFile = line === undefined ? [] : [line, ...(column === undefined ? [] : [column])];
  const where = [[file, ...inFile].filter((part) => part !== undefined).join(':'), path];
  const place = where
    .map((part) => (part === undefined || part === '' ? '' : `${part}: `))
    .join('');
  return `${place}${problem.message} ${problem.mend}`.trim();
}

/** The same for each problem that follows from no other, with the number of those that follow from it. */
export function showRoots(problems: readonly Problem[]): readonly string[] {
  const placeOf = (file: string | undefined, path: string) => JSON.stringify([file, path]);
  const following = new Map<string, number>();
  for (const { file, follows } of problems) {
    if (follows === undefined) continue;
    const place = placeOf(file, follows);
    following.set(place, (following.get(place) ?? 0) + 1);
  }
  return problems
    .filter(({ follows }) => follows === undefined)
    .map((root) => {
      const more = following.get(placeOf(root.file, root.path ?? '')) ?? 0;
      return `${showProblem(root)}${more === 0 ? '' : ` And ${more} more that follow${more === 1 ? 's' : ''} from this.`}`;
    });
}

/** Ends a switch over a union: a case that was forgotten does not compile. */
export function never(value: never): never {
  throw new Error(`forgotten case: ${JSON.stringify(value)}`);
}
