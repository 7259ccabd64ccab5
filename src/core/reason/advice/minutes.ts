import { at } from '../../at.ts';
import type { Check, Standing, Tree } from '../../tree/model.ts';
import { neededBy, overAfter, type Needed } from '../../tree/states.ts';
import { partPrice } from '../prudence.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import type { Model } from '../belief/model.ts';

/** A check or a repair to do next, by index in the model. */
export type Move = { readonly do: 'check' | 'repair'; readonly index: number };

/** A step by the name it has in the tree. */
export type StepName = { readonly do: Move['do']; readonly id: string };

/** The move of a step's name; undefined where the model has no such step. */
export function moveNamed({ causes, checks }: Model, { do: kind, id }: StepName): Move | undefined {
  const index = (kind === 'check' ? checks : causes).findIndex((one) => one.id === id);
  return index < 0 ? undefined : { do: kind, index };
}

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

/** A standing with what a step asks for changed. */
function changed(from: WholeStanding, to: Standing): WholeStanding {
  return {
    battery: to.battery ?? from.battery,
    key: to.key ?? from.key,
    engine: to.engine ?? from.engine,
    heat: to.heat ?? from.heat,
  };
}

/** What a step takes from here, in minutes; `proof` is what is tested after a repair. */
export type MoveMinutes = {
  readonly own: number;
  /** Opening up what is shut, and closing it again afterwards. */
  readonly access: number;
  readonly standing: number;
  /** Bringing a passing state back that an earlier step has spent. */
  readonly state: number;
  readonly proof: number;
  readonly total: number;
};

/** How the vehicle is left between two steps: what is open on it, how it stands, what has passed. */
export type Place = {
  readonly open: ReadonlySet<string>;
  readonly standing: WholeStanding;
  /** Passing states that are over. */
  readonly over: readonly string[];
};

/** What a check or a repair asks for. */
export type Work = {
  readonly minutes: number;
  readonly access: readonly string[];
  readonly standing: Standing;
  /** The passing state in which alone it tells anything, and the minutes to bring that back. */
  readonly needs?: Pick<Needed, 'state' | 'minutes' | 'brings'> | undefined;
  /** Passing states that are over once it is done. */
  readonly spends?: readonly string[] | undefined;
};

/** The work of a check of a tree. */
export const workOf = (tree: Tree, check: Check): Work => ({
  ...check,
  needs: neededBy(tree, check),
});

type Shop = Pick<ReasoningInput, 'accesses'>;

/** The place that is recorded: what is not said of the standing is as on a parked vehicle. */
export const placeOf = (
  openAccess: readonly string[],
  standing: Standing,
  over: readonly string[] = [],
): Place => ({ open: new Set(openAccess), standing: changed(parked, standing), over });

/** Minutes to open an access and to close it again; one that the shop does not know costs none. */
export function accessMinutes({ accesses }: Shop, id: string): number {
  const known = Object.hasOwn(accesses, id) ? accesses[id] : undefined;
  return known === undefined ? 0 : known.open + known.close;
}

/** The place that a piece of work leaves behind. */
export const placeAfter = ({ open, standing, over }: Place, work: Work): Place => ({
  open: open.union(new Set(work.access)),
  standing: changed(standing, work.standing),
  over: overAfter(over, { brings: work.needs?.brings, spends: work.spends }),
});

/** Minutes of one piece of work done `tries` times: everything is opened and set up once. */
export function workMinutes(shop: Shop, work: Work, place: Place, tries = 1): MoveMinutes {
  const shut = new Set(work.access).difference(place.open);
  const access = [...shut].reduce((minutes, id) => minutes + accessMinutes(shop, id), 0);
  const standing = changeMinutes(place.standing, work.standing);
  const { needs } = work;
  const state = needs !== undefined && place.over.includes(needs.state) ? needs.minutes : 0;
  const own = work.minutes * tries;
  return { own, access, standing, state, proof: 0, total: own + access + standing + state };
}

/** A piece of work, and how many times it is done. */
type Task = { readonly work: Work; readonly times: number };

/** The complaint's own test proves a repair, and is tried as often as a proof must be. */
const checkTask = ({ model, tries }: ReasoningInput, check: number): Task => ({
  work: at(model.checks, check),
  times: check === model.complaint ? tries : 1,
});

/** The tasks of a move in order: a check alone, or a repair, what it asks to repeat, and its proof. */
function tasksOf(input: ReasoningInput, { do: kind, index }: Move): readonly [Task, ...Task[]] {
  const { causes, checks, complaint } = input.model;
  if (kind === 'check')
    return [input.repairs > 0 ? checkTask(input, index) : { work: at(checks, index), times: 1 }];
  const work = at(causes, index);
  return [
    { work, times: 1 },
    ...[...work.repeats, complaint].map((check) => checkTask(input, check)),
  ];
}

/** The accesses that a move needs open, its proof's among them. */
export const accessOf = (input: ReasoningInput, move: Move): readonly string[] =>
  tasksOf(input, move).flatMap(({ work }) => work.access);

/** The place that a move leaves behind, its proof done. */
export const placeAfterMove = (input: ReasoningInput, move: Move, place: Place): Place =>
  tasksOf(input, move).reduce((before, { work }) => placeAfter(before, work), place);

/**
 * Minutes of a check, or of a repair with what it asks to repeat and its proof, from a place: where
 * the vehicle is left now unless another is given. Every price of a step comes from here.
 */
export function moveMinutes(
  input: ReasoningInput,
  move: Move,
  place = placeOf(input.openAccess, input.standing, input.over),
): MoveMinutes {
  const [first, ...proving] = tasksOf(input, move);
  const own = workMinutes(input, first.work, place, first.times);
  let here = placeAfter(place, first.work);
  let proof = 0;
  for (const { work, times } of proving) {
    proof += workMinutes(input, work, here, times).total;
    here = placeAfter(here, work);
  }
  return { ...own, proof, total: own.total + proof };
}

/** What has to be bought for a move, in minutes of work. */
export const movePrice = ({ model, prudence }: ReasoningInput, { do: kind, index }: Move): number =>
  kind === 'check' ? 0 : partPrice(at(model.causes, index).part, prudence);
