/** All the wires that lead to one check: where it is entered, and the rows that they come from. */
export type Bus = {
  readonly target: string;
  readonly entry: number;
  readonly from: readonly number[];
};

export type LaidBus = Bus & {
  /** The lane that it runs in, 0 for the innermost. */
  readonly lane: number;
  readonly top: number;
  readonly foot: number;
};

/** Room between two wires in one lane, so that they do not read as one. */
const apart = 8;

/** Gives each bus a lane in which it meets no other; the shortest run innermost, where they are crossed least. */
export function inLanes(buses: readonly Bus[]): readonly LaidBus[] {
  const lanes: LaidBus[][] = [];
  const runs = buses
    .map((bus) => ({
      ...bus,
      top: Math.min(bus.entry, ...bus.from),
      foot: Math.max(bus.entry, ...bus.from),
    }))
    .toSorted((one, other) => one.foot - one.top - (other.foot - other.top));
  for (const run of runs) {
    const free = lanes.findIndex((laid) =>
      laid.every(({ top, foot }) => foot + apart < run.top || run.foot + apart < top),
    );
    const lane = free === -1 ? lanes.length : free;
    (lanes[lane] ??= []).push({ ...run, lane });
  }
  return lanes.flat();
}
