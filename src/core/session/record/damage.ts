/** Something that the lines of a record say was done to it. */
export type Damage = {
  /** 1 is the header. */
  readonly line: number;
  /**
   * `torn`: a write cut off by a power loss; `altered`: bytes changed after they were written; `cut`:
   * lines that stood before it are missing; `line-ends`: another program changed the ends of lines,
   * or put a mark at the beginning, and what they say is proven all the same.
   */
  readonly kind: 'torn' | 'altered' | 'cut' | 'line-ends';
  readonly bytes: number;
};

/** What has become of a record, in the word that is told; of several the gravest. */
export type RecordState = 'whole' | 'line ends changed' | 'torn' | 'cut short' | 'altered';

/** The gravest first. */
const states = [
  ['altered', 'altered'],
  ['cut', 'cut short'],
  ['torn', 'torn'],
  ['line-ends', 'line ends changed'],
] as const;

export function stateOf(damage: readonly Damage[], openEnd = false): RecordState {
  const found = states.find(([kind]) => damage.some((one) => one.kind === kind))?.[1];
  return openEnd && (found === undefined || found === 'line ends changed')
    ? 'torn'
    : (found ?? 'whole');
}

/** Lines that are in the file and not in the story. */
export const passedOver = (damage: readonly Damage[]): number =>
  damage.filter(({ kind }) => kind === 'torn' || kind === 'altered').length;

/**
 * What stands first in everything made from an altered or cut record; undefined for any other. What
 * a power loss tore was never acknowledged: that is told where the record is told of.
 */
export function recordWarning(damage: readonly Damage[]): string | undefined {
  const said = [
    where(damage, 'altered', (lines) => `was altered after it was written (${lines})`),
    where(damage, 'cut', (lines) => `was cut short: lines are missing before ${lines}`),
  ].filter((one) => one !== undefined);
  return said.length === 0
    ? undefined
    : `This record ${said.join(', and ')}. What it hides cannot be told: what stands here rests on the other lines.`;
}

/** So many lines are named one by one. */
const named = 5;

function where(
  damage: readonly Damage[],
  kind: Damage['kind'],
  words: (lines: string) => string,
): string | undefined {
  const lines = damage.filter((one) => one.kind === kind).map(({ line }) => line);
  if (lines.length === 0) return undefined;
  const more = lines.length > named ? ` and ${lines.length - named} more` : '';
  return words(`line ${lines.slice(0, named).join(', ')}${more}`);
}
