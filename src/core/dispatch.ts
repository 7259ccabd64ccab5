/** A handler for every member of a union by its word (`kind`, `do`): one that is missing is an error of types. */
export type Handlers<U, Word extends keyof U, Rest extends readonly unknown[], R> = {
  readonly [V in U[Word] & string]: (one: Extract<U, Record<Word, V>>, ...rest: Rest) => R;
};

/**
 * Hands a member of a union to its handler. The cast is sound by the type of the table, which says
 * that the handler under a word takes the very members that bear it; TypeScript cannot follow that.
 */
export function dispatch<U, Word extends keyof U, Rest extends readonly unknown[], R>(
  handlers: Handlers<U, Word, Rest, R>,
  word: Word,
  one: U,
  ...rest: Rest
): R {
  const handler = handlers[one[word] as U[Word] & string] as (one: U, ...rest: Rest) => R;
  return handler(one, ...rest);
}
