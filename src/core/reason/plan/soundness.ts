import { at } from '../../at.ts';
import { fillTree } from '../../feed/fill.ts';
import type { Problem } from '../../problem.ts';
import type { Tree } from '../../tree/model.ts';
import { nextsOf } from '../../tree/way/next.ts';
import { makeModel } from '../belief/model.ts';
import { unlisted } from '../../tree/model.ts';
import type { Model } from '../belief/model.ts';
import { OwnRoutes } from './routes.ts';
import type { Route } from './routes.ts';

/** A route on which the tree condemns a cause although another one is likelier there. */
export type Doubt = {
  readonly condemned: string;
  readonly chance: number;
  readonly likelier: string;
  readonly likelierChance: number;
  /** Share of all vehicles with this complaint that come here. */
  readonly share: number;
  /** `check: result` in order. */
  readonly route: readonly string[];
};

export type Soundness = {
  readonly problems: readonly Problem[];
  /** For the author to judge, most vehicles first. */
  readonly doubts: readonly Doubt[];
  /** Share of the vehicles that was followed to an end. */
  readonly followed: number;
};

/** Routes of fewer vehicles than this are not followed. */
const leastFollowed = 0.0002;
/** Doubts, and wrong condemnations, of fewer vehicles than this are not told. */
const leastTold = { doubt: 0.005, wrong: 0.002 } as const;
/** A cause that makes a check abnormal less often than this does not move by it. */
const leastMove = 0.01;

/** A tree's own way held against the belief: what it condemns wrongly, what its checks tell. */
export function soundness(tree: Tree, file: string): Soundness {
  const filled = fillTree(tree, {});
  const model = makeModel(filled);
  const { routes, followed } = new OwnRoutes(filled, model, leastFollowed).run();
  return {
    problems: [...idle(model), ...wrongly(filled, model, routes)].map((one) => ({ ...one, file })),
    doubts: doubtsOf(filled, model, routes),
    followed,
  };
}

/** Checks no result of which moves a suspect: no listed cause makes them abnormal. */
function idle(model: Model): readonly Problem[] {
  const listed = model.causes.flatMap(({ id }, index) => (id === unlisted ? [] : [index]));
  return model.checks
    .filter(
      ({ links }, index) =>
        index !== model.complaint &&
        listed.every((cause) => 1 - (links[cause]?.[0] ?? 1) < leastMove),
    )
    .map(({ id }) => ({
      code: 'check-tells-nothing',
      path: `checks.${id}.points`,
      value: id,
      message: 'No result of this check moves any suspect.',
      mend: 'Give "points" for the causes that it would show, or take it out.',
    }));
}

type Condemnation = {
  readonly path: string;
  readonly cause: number;
  share: number;
  readonly there: number[];
};

/** All that one result condemns, over every route that ends there. */
function condemnations(
  tree: Tree,
  model: Model,
  routes: readonly Route[],
): readonly Condemnation[] {
  const found = new Map<string, Condemnation>();
  for (const { end, shown, share, chances } of routes) {
    const last = shown.at(-1);
    if (end.kind !== 'cause' || last === undefined) continue;
    const path = placeOf(tree, shown, end.cause);
    const cause = model.causes.findIndex(({ id }) => id === end.cause);
    const one = found.get(path) ?? { path, cause, share: 0, there: model.causes.map(() => 0) };
    one.share += share;
    chances.forEach((chance, index) => {
      one.there[index] = at(one.there, index) + share * chance;
    });
    found.set(path, one);
  }
  return [...found.values()];
}

/** The result that names the cause: not always the last shown, where known checks were passed. */
function placeOf(tree: Tree, shown: Route['shown'], cause: string): string {
  const naming = shown.findLast(({ check, result }) =>
    (tree.checks[check]?.results.slice(result, result + 1) ?? [])
      .flatMap(nextsOf)
      .includes(`cause:${cause}`),
  );
  return naming === undefined ? 'checks' : `checks.${naming.check}.results[${naming.result}].next`;
}

const percent = (chance: number): string => `${(100 * chance).toFixed(chance < 0.1 ? 1 : 0)} %`;

/** Condemnations that are wrong more often than right, over all that they condemn. */
function wrongly(tree: Tree, model: Model, routes: readonly Route[]): readonly Problem[] {
  return condemnations(tree, model, routes).flatMap(({ path, cause, share, there }) => {
    const right = at(there, cause) / share;
    const most = there.indexOf(Math.max(...there));
    if (right >= 0.5 || most === cause || share < leastTold.wrong) return [];
    const likelier = at(model.causes, most).id;
    return [
      {
        code: 'condemns-wrongly',
        path,
        value: at(model.causes, cause).id,
        message: `This cause is there on ${percent(right)} of the vehicles condemned here (${percent(share)} of all); "${likelier}" is on ${percent(at(there, most) / share)}.`,
        mend: 'Lead to a check that tells the two apart, or mend the odds, or what shows with what.',
      },
    ];
  });
}

function doubtsOf(tree: Tree, model: Model, routes: readonly Route[]): readonly Doubt[] {
  return routes
    .flatMap(({ end, shown, share, chances }): readonly Doubt[] => {
      if (end.kind !== 'cause' || share < leastTold.doubt) return [];
      const most = chances.indexOf(Math.max(...chances));
      const cause = model.causes.findIndex(({ id }) => id === end.cause);
      if (most === cause) return [];
      return [
        {
          condemned: end.cause,
          chance: at(chances, cause),
          likelier: at(model.causes, most).id,
          likelierChance: at(chances, most),
          share,
          route: shown.map(
            ({ check, result }) =>
              `${check}: ${tree.checks[check]?.results[result]?.id ?? String(result)}`,
          ),
        },
      ];
    })
    .toSorted((one, other) => other.share - one.share);
}

/** One line for the author: how many vehicles come here, what is condemned, what is likelier. */
export const showDoubt = (tree: Tree, doubt: Doubt): string =>
  `${tree.id}: ${percent(doubt.share)} of the vehicles end at ${doubt.condemned} (${percent(doubt.chance)}) although ${doubt.likelier} is likelier (${percent(doubt.likelierChance)}): ${doubt.route.join(', ')}.`;
