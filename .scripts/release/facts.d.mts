export type Facts = {
  readonly version: string;
  readonly locked: string;
  readonly heading: string | undefined;
  readonly changed: readonly string[];
  readonly tags: readonly string[];
  readonly commit: string;
};
export function factsOf(folder: string): Facts;
export function headingOf(changes: string): string | undefined;
export function refusals(facts: Facts): readonly string[];
export function byHand(facts: Facts, tarball: string, isPrivate: boolean): readonly string[];
