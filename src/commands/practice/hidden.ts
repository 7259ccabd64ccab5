/** What is to be hidden, as it was asked for on the command line. */
export type Hidden = {
  readonly tree: string;
  readonly seed: string | undefined;
  readonly hard: boolean;
  readonly causes: readonly string[];
  /** As typed: `transmission=automatic,ground-side=negative`. */
  readonly facts: string;
  readonly set: { readonly name: string; readonly number: number } | undefined;
  /** The tree that a set was made of: see `markOf`. */
  readonly mark?: string;
};
