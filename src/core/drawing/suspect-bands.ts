import { sum } from '../sum.ts';
import { unlisted } from '../tree/model.ts';
import {
  chancesAtFirst,
  type ChanceMap,
  type BeliefStep,
} from '../reason/history/belief-history.ts';
import type { Story } from '../session/story.ts';

/** One suspect's share after each finding; the shares of one moment sum to at most 1. */
export type Band = {
  readonly name: string;
  readonly kind: 'cause' | 'others' | 'unlisted';
  readonly shares: readonly number[];
  /** Chances, not shares: at first and the highest it came to. */
  readonly first: number;
  readonly most: number;
};

export type Moment = { readonly label: string; readonly kind: 'start' | BeliefStep['kind'] };

export type SuspectBands = { readonly moments: readonly Moment[]; readonly bands: readonly Band[] };

const mostNamed = 6;
const mostMoments = 40;

/**
 * The suspects over one leg of a session. Several causes may be there at once, so that their
 * chances can sum to more than 1: then each is drawn as its share of the sum.
 */
export function suspectBands(
  story: Story,
  history: readonly BeliefStep[],
  leg = 0,
): SuspectBands | undefined {
  const first = chancesAtFirst(story, leg);
  const steps = history.filter((step) => step.leg === leg && step.after !== undefined);
  if (first === undefined || steps.length === 0) return undefined;
  const kept = steps.slice(0, mostMoments);
  const columns: readonly ChanceMap[] = [first, ...kept.map(({ after }) => after ?? first)];
  const scales = columns.map((column) => 1 / Math.max(1, sum([...column.values()])));
  const tree = story.legs[leg]?.tree;
  const listed = Object.keys(tree?.causes ?? {}).filter((id) => first.has(id));
  const most = (id: string): number => Math.max(...columns.map((column) => column.get(id) ?? 0));
  const mended = new Set([...story.condemned, ...story.repairs].map(({ cause }) => cause));
  const rank = (id: string): number => most(id) + (mended.has(id) ? 1 : 0);
  const named = listed.toSorted((one, other) => rank(other) - rank(one)).slice(0, mostNamed);
  const bandOf = (kind: Band['kind'], name: string, ids: readonly string[]): Band => {
    const chances = columns.map((column) => sum(ids.map((id) => column.get(id) ?? 0)));
    return {
      name,
      kind,
      shares: chances.map((chance, index) => chance * (scales[index] ?? 1)),
      first: chances[0] ?? 0,
      most: Math.max(...chances),
    };
  };
  const others = listed.filter((id) => !named.includes(id));
  return {
    moments: momentsOf(kept, history),
    bands: [
      ...named.map((id) => bandOf('cause', tree?.causes[id]?.name ?? id, [id])),
      ...(others.length === 0
        ? []
        : [bandOf('others', `the other ${others.length} on the list`, others)]),
      ...(first.has(unlisted) ? [bandOf('unlisted', 'something not on the list', [unlisted])] : []),
    ],
  };
}

/** Findings carry the number that they have in the account's table. */
function momentsOf(
  steps: readonly BeliefStep[],
  history: readonly BeliefStep[],
): readonly Moment[] {
  const numbers = new Map(
    history.filter(({ kind }) => kind === 'finding').map(({ n }, index) => [n, index + 1]),
  );
  return [
    { label: 'start', kind: 'start' },
    ...steps.map(({ kind, n }): Moment => ({
      kind,
      label: kind === 'repair' ? 'R' : String(numbers.get(n)),
    })),
  ];
}
