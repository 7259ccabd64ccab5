import type { Standing } from '../../tree/model.ts';
import type { Case } from '../belief/evidence.ts';

/** A check or a repair to do next, by index in the model. */
export type Move = { readonly do: 'check' | 'repair'; readonly index: number };

export type WholeStanding = {
  readonly [Field in keyof Standing]-?: NonNullable<Standing[Field]>;
};

/** How a parked vehicle stands; taken where nothing else is known. */
export const parked: WholeStanding = {
  battery: 'connected',
  key: 'off',
  engine: 'off',
  heat: 'cold',
};

const fields = ['battery', 'key', 'engine', 'heat'] as const;

// Minutes to change one thing, and to warm or cool an engine: common practice, no source.
const changeOne = 2;
const warmUp: Readonly<
  Record<WholeStanding['heat'], Readonly<Record<WholeStanding['heat'], number>>>
> = {
  cold: { cold: 0, warm: 12, hot: 25, 'hot-soaked': 40 },
  warm: { cold: 45, warm: 0, hot: 13, 'hot-soaked': 28 },
  hot: { cold: 90, warm: 45, hot: 0, 'hot-soaked': 15 },
  'hot-soaked': { cold: 90, warm: 45, hot: 5, 'hot-soaked': 0 },
};

/** Minutes from one standing to what a step asks for; what it does not name stays. */
export function changeMinutes(from: WholeStanding, to: Standing): number {
  return fields.reduce((minutes, field) => {
    const wanted = to[field];
    if (wanted === undefined || wanted === from[field]) return minutes;
    return minutes + (field === 'heat' ? warmUp[from.heat][to.heat ?? from.heat] : changeOne);
  }, 0);
}

export function changed(from: WholeStanding, to: Standing): WholeStanding {
  return {
    battery: to.battery ?? from.battery,
    key: to.key ?? from.key,
    engine: to.engine ?? from.engine,
    heat: to.heat ?? from.heat,
  };
}

/** What a step takes from here, in minutes; `proof` is the complaint's test after a repair. */
export type MoveMinutes = {
  readonly own: number;
  /** Opening up what is shut, and closing it again afterwards. */
  readonly access: number;
  readonly standing: number;
  readonly proof: number;
  readonly total: number;
};

type Place = { readonly open: ReadonlySet<string>; readonly standing: WholeStanding };
type Work = {
  readonly minutes: number;
  readonly access: readonly string[];
  readonly standing: Standing;
};

function parts(given: Case, work: Work, place: Place): { access: number; standing: number } {
  const shut = new Set(work.access.filter((id) => !place.open.has(id)));
  const access = [...shut].reduce((minutes, id) => {
    const known = Object.hasOwn(given.accesses, id) ? given.accesses[id] : undefined;
    return minutes + (known?.open ?? 0) + (known?.close ?? 0);
  }, 0);
  return { access, standing: changeMinutes(place.standing, work.standing) };
}

const nothingToDo: Work = { minutes: 0, access: [], standing: {} };

/** Minutes of a check, or of a repair with its proof, from where the vehicle stands now. */
export function moveMinutes(given: Case, move: Move): MoveMinutes {
  const { causes, checks, complaint } = given.model;
  const work = (move.do === 'check' ? checks : causes)[move.index] ?? nothingToDo;
  const place = { open: new Set(given.openAccess), standing: changed(parked, given.standing) };
  const first = parts(given, work, place);
  const proving = checks[complaint];
  if (move.do === 'check' || proving === undefined) {
    const tries = move.index === complaint && move.do === 'check' ? given.tries : 1;
    const own = work.minutes * tries;
    return { own, ...first, proof: 0, total: own + first.access + first.standing };
  }
  const then = {
    open: place.open.union(new Set(work.access)),
    standing: changed(place.standing, work.standing),
  };
  const second = parts(given, proving, then);
  const proof = proving.minutes * given.tries + second.access + second.standing;
  return {
    own: work.minutes,
    ...first,
    proof,
    total: work.minutes + first.access + first.standing + proof,
  };
}
