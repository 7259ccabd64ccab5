/** What a complaint is about, in the order in which complaints are listed. Trade words, no source. */
export const groups = ['electrical', 'engine', 'fuel', 'cooling', 'brakes', 'chassis'] as const;

export type Group = (typeof groups)[number];

/** What each group is about, for somebody who has to choose one. */
export const groupMeanings: Readonly<Record<Group, string>> = {
  electrical: 'electrical: battery, wires, lamps, gauges',
  engine: 'engine: starting, running, smoke, noise',
  fuel: 'fuel: from the tank to the carburetor',
  cooling: 'cooling and heater',
  brakes: 'brakes',
  chassis: 'chassis: clutch, transmission, steering, wheels',
};

/** The group a word names. */
export const groupNamed = (word: string | undefined): Group | undefined =>
  groups.find((group) => group === word);

/** What stands for a tree that says none. */
const ungrouped = 'other';

/** The group of a tree in a word, for a column of its own. */
export const groupWord = ({ group = ungrouped }: { readonly group?: string | undefined }): string =>
  group;

/** A title with its group before it, where it has one. */
export const groupedTitle = ({
  title,
  group,
}: {
  readonly title: string;
  readonly group?: string | undefined;
}): string => (group === undefined ? title : `${group}: ${title}`);

const place = ({ group }: { readonly group?: string | undefined }): number => {
  const at = groups.findIndex((one) => one === group);
  return at < 0 ? groups.length : at;
};

/** Trees by their groups; within one in the order in which they came. */
export const byGroup = <T extends { readonly group?: string | undefined }>(
  trees: readonly T[],
): readonly T[] => trees.toSorted((one, other) => place(one) - place(other));
