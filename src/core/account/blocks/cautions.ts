import type { PayloadOf } from '../../session/event.ts';
import { fromLegs, type Story } from '../../session/story.ts';
import type { Caution } from '../../tree/shop.ts';
import { paragraph, type Block } from '../block.ts';
import { asClause, joined } from '../words/wording.ts';

const cautionIn = (story: Story, id: string): Caution | undefined =>
  fromLegs(story, ({ shop }) => shop.cautions[id]);

/** The cautions of a check as its tree names them. */
export const checkCautions = (story: Story, check: string, leg: number): readonly string[] =>
  story.legs[leg]?.tree.checks[check]?.cautions ?? [];

export const repairCautions = (
  story: Story,
  { cause }: Pick<PayloadOf<'repaired'>, 'cause'>,
): readonly string[] => fromLegs(story, ({ tree }) => tree.causes[cause]?.repair.cautions) ?? [];

const hazardOf = ({ hazard }: Caution): string => hazard.replace(/[?.:]$/, '');

/** A caution, and who is to be asked before this page. */
const withDefer = ({ text, defer }: Caution): string =>
  defer === undefined ? text : `${text} Ask first: ${defer.replace(/\.$/, '')}.`;

/** Keeps which cautions have been told in full, so that each is told once and in its place. */
export class ToldCautions {
  readonly #story: Story;
  readonly #told = new Set<string>();
  readonly #named = new Set<string>();

  constructor(story: Story) {
    this.#story = story;
  }

  /** What must be read before a paragraph: those that can maim in full, new ones by name. */
  before(ids: readonly string[], all: boolean): readonly Block[] {
    const fresh = [...new Set(ids)].filter((id) => !this.#told.has(id));
    const blocks = fresh.flatMap((id): Block[] => {
      const caution = cautionIn(this.#story, id);
      if (caution === undefined) return [];
      if (!all && !caution.acknowledge) {
        this.#named.add(id);
        return [];
      }
      this.#told.add(id);
      return [{ kind: 'warning', name: hazardOf(caution), text: withDefer(caution) }];
    });
    return blocks;
  }

  /** At the end: the others in full, and who knows more about any of them. */
  atTheEnd(): readonly Block[] {
    const others = [...this.#named].filter((id) => !this.#told.has(id));
    const items = others.flatMap((id) => {
      const caution = cautionIn(this.#story, id);
      return caution === undefined ? [] : [`${hazardOf(caution)}: ${withDefer(caution)}`];
    });
    const told = [...this.#told].flatMap((id) => cautionIn(this.#story, id)?.hazard ?? []);
    return [
      ...(items.length === 0 ? [] : [{ kind: 'list' as const, items, numbered: false }]),
      ...(told.length === 0
        ? []
        : [paragraph(`Told before the step they belong to: ${joined(told.map(asClause))}.`)]),
    ];
  }
}
