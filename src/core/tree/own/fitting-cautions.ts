import { hazardsIn } from '../lint/hazard-words.ts';
import type { Shop } from '../shop.ts';

/**
 * The cautions that own words call for, by the rule that a tree's texts are held to: of each hazard
 * the first that the shop has, unless one of them stands there already.
 */
export function fittingCautions(
  texts: readonly string[],
  { cautions }: Pick<Shop, 'cautions'>,
): readonly string[] {
  return hazardsIn(texts, {}).reduce<readonly string[]>((chosen, hazard) => {
    const fitting = hazard.cautions.filter((id) => Object.hasOwn(cautions, id));
    const [first] = fitting;
    return first === undefined || fitting.some((id) => chosen.includes(id))
      ? chosen
      : [...chosen, first];
  }, []);
}
