/** A conductance between two unknown nodes, by number. */
export type Edge = { readonly from: number; readonly to: number; readonly siemens: number };

/** A factored network: answers the volts of every node for amps pushed into the nodes. */
export type Elimination = { readonly solve: (amps: Float64Array) => Float64Array };

/** A node taken out, and what it was joined to then. */
type Pivot = {
  readonly node: number;
  /** Everything that leaves the node: to its neighbours and to the reference. */
  readonly total: number;
  readonly neighbours: Int32Array;
  readonly siemens: Float64Array;
};

/**
 * Eliminates the nodes of a resistive network one by one, least connected first, each replaced by
 * the mesh among its neighbours (the star-mesh transform). This is LDLᵀ on the conductance matrix,
 * but the links to the reference are kept apart, so nothing is ever subtracted: a 10 MΩ meter
 * beside a 0.3 mΩ clamp costs no digits. A node with no way to the reference reads 0 V here;
 * callers look for floating parts first.
 */
export function eliminate(
  size: number,
  edges: readonly Edge[],
  toReference: Float64Array,
): Elimination {
  const links = linksOf(size, edges);
  const grounded = Float64Array.from(toReference);
  const queue = makeQueue(links);
  const pivots: Pivot[] = [];
  for (let node = queue.next(); node !== undefined; node = queue.next()) {
    const pivot = takeOut(node, links, grounded);
    pivots.push(pivot);
    for (const neighbour of pivot.neighbours) queue.touched(neighbour);
  }
  return { solve: (amps) => solveWith(pivots, amps) };
}

type Links = readonly Map<number, number>[];

function linksOf(size: number, edges: readonly Edge[]): Links {
  const links = Array.from({ length: size }, () => new Map<number, number>());
  for (const { from, to, siemens } of edges) {
    if (from === to) continue;
    add(links[from], to, siemens);
    add(links[to], from, siemens);
  }
  return links;
}

function add(row: Map<number, number> | undefined, node: number, siemens: number): void {
  row?.set(node, (row.get(node) ?? 0) + siemens);
}

/** Takes one node out and joins its neighbours: g(i,j) grows by g(i,k)·g(k,j) / total(k). */
function takeOut(node: number, links: Links, grounded: Float64Array): Pivot {
  const row = [...(links[node] ?? [])];
  const own = grounded[node] ?? 0;
  const total = row.reduce((sum, [, siemens]) => sum + siemens, own);
  row.forEach(([first, toFirst], at) => {
    links[first]?.delete(node);
    grounded[first] = (grounded[first] ?? 0) + (toFirst * own) / total;
    for (let other = at + 1; other < row.length; other += 1) {
      const [second, toSecond] = row[other] ?? [first, 0];
      const mesh = (toFirst * toSecond) / total;
      add(links[first], second, mesh);
      add(links[second], first, mesh);
    }
  });
  return {
    node,
    total,
    neighbours: Int32Array.from(row, ([neighbour]) => neighbour),
    siemens: Float64Array.from(row, ([, siemens]) => siemens),
  };
}

/** Minimum degree: buckets by number of neighbours; stale entries are skipped when met. */
function makeQueue(links: Links) {
  const buckets: number[][] = [];
  const gone = new Uint8Array(links.length);
  let lowest = 0;
  const touched = (node: number): void => {
    const degree = links[node]?.size ?? 0;
    (buckets[degree] ??= []).push(node);
    lowest = Math.min(lowest, degree);
  };
  const next = (): number | undefined => {
    while (lowest < buckets.length) {
      const node = buckets[lowest]?.pop();
      if (node === undefined) lowest += 1;
      else if (gone[node] === 0 && links[node]?.size === lowest) {
        gone[node] = 1;
        return node;
      }
    }
    return undefined;
  };
  links.forEach((_row, node) => touched(node));
  return { next, touched };
}

function solveWith(pivots: readonly Pivot[], amps: Float64Array): Float64Array {
  const pushed = Float64Array.from(amps);
  for (const { node, total, neighbours, siemens } of pivots) {
    if (total === 0) continue;
    const share = (pushed[node] ?? 0) / total;
    for (let at = 0; at < neighbours.length; at += 1) {
      const neighbour = neighbours[at] ?? 0;
      pushed[neighbour] = (pushed[neighbour] ?? 0) + (siemens[at] ?? 0) * share;
    }
  }
  const volts = new Float64Array(amps.length);
  for (let at = pivots.length - 1; at >= 0; at -= 1) {
    const pivot = pivots[at];
    if (pivot !== undefined && pivot.total > 0) volts[pivot.node] = voltsOf(pivot, pushed, volts);
  }
  return volts;
}

function voltsOf(pivot: Pivot, pushed: Float64Array, volts: Float64Array): number {
  let sum = pushed[pivot.node] ?? 0;
  for (let at = 0; at < pivot.neighbours.length; at += 1)
    sum += (pivot.siemens[at] ?? 0) * (volts[pivot.neighbours[at] ?? 0] ?? 0);
  return sum / pivot.total;
}
