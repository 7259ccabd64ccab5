import type * as z from 'zod';

type Path = readonly PropertyKey[];

/** What a model says of one place of a value. */
export type Issue =
  | { readonly kind: 'unknown-key'; readonly path: Path; readonly key: string }
  | { readonly kind: 'wrong-id'; readonly path: Path; readonly id: string }
  | { readonly kind: 'invalid_type'; readonly path: Path }
  | { readonly kind: 'invalid_value'; readonly path: Path; readonly values: readonly unknown[] }
  | {
      readonly kind: 'too_small' | 'too_big';
      readonly path: Path;
      readonly limit: string;
      readonly inclusive: boolean;
    }
  | { readonly kind: 'other'; readonly path: Path; readonly message: string };

/** Issues one a place: keys apart, and of a union what the member says that fits the value best. */
export const flatIssues = (
  issues: readonly z.core.$ZodIssue[],
  path: Path = [],
): readonly Issue[] => issues.flatMap((issue) => flat(issue, [...path, ...issue.path]));

function flat(issue: z.core.$ZodIssue, path: Path): readonly Issue[] {
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ kind: 'unknown-key', path: [...path, key], key }));
    case 'invalid_key':
      return [{ kind: 'wrong-id', path, id: String(path.at(-1)) }];
    case 'invalid_format':
      return [{ kind: 'wrong-id', path, id: String(issue.input) }];
    case 'invalid_type':
      return [{ kind: 'invalid_type', path }];
    case 'invalid_value':
      return [{ kind: 'invalid_value', path, values: issue.values }];
    case 'invalid_union':
      return ofUnion(issue.errors, path, typeof issue.input === 'object');
    case 'too_small':
    case 'too_big':
      return [sizeOf(issue, path)];
    default:
      return [{ kind: 'other', path, message: issue.message }];
  }
}

const sizeOf = (issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall, path: Path): Issue => ({
  kind: issue.code,
  path,
  limit: String(issue.code === 'too_small' ? issue.minimum : issue.maximum),
  inclusive: issue.inclusive !== false,
});

/** Members of a union that want a value of this kind come first, then those with least against it. */
function ofUnion(
  errors: readonly z.core.$ZodIssue[][],
  path: Path,
  isBlock: boolean,
): readonly Issue[] {
  const members = errors.map((issues) => flatIssues(issues, path));
  const isKind = (issues: readonly Issue[]): boolean =>
    issues.every(
      (one) =>
        one.path.length > path.length ||
        (one.kind !== 'invalid_type' && !(isBlock && one.kind === 'invalid_value')),
    );
  const fitting = members.filter(isKind);
  const words = fitting.flatMap((issues) =>
    issues.flatMap((one) =>
      one.kind === 'invalid_value' && one.path.length === path.length ? one.values : [],
    ),
  );
  if (words.length > 0) return [{ kind: 'invalid_value', path, values: words }];
  const [best = [{ kind: 'invalid_type', path }]] = fitting.toSorted(
    (one, other) => one.length - other.length,
  );
  return best;
}
