import { fromLegs, type Guarded, type Story } from '../../session/story.ts';
import type { Caution } from '../../tree/shop.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { asClause, joined, sentence } from '../words/wording.ts';

type Told = { readonly id: string; readonly caution: Caution; readonly steps: number };

/** The cautions of a step, as the tree of its leg names them. */
function cautionsBefore({ legs }: Story, step: Guarded, leg: number): readonly string[] {
  const tree = legs[leg]?.tree;
  switch (step.kind) {
    case 'check':
      return tree?.checks[step.check]?.cautions ?? [];
    case 'repair':
      return tree?.causes[step.cause]?.repair.cautions ?? [];
    case 'standing':
      return [];
  }
}

/** The cautions of every step that was taken, in the order in which they first came. */
function cautionsOf(story: Story): readonly Told[] {
  const steps: readonly { readonly n: number; readonly leg: number; readonly step: Guarded }[] = [
    ...story.findings.map(({ n, leg, check }) => ({
      n,
      leg,
      step: { kind: 'check', check } as const,
    })),
    ...story.repairs.map(({ n, leg, cause }) => ({
      n,
      leg,
      step: { kind: 'repair', cause } as const,
    })),
    ...story.passed,
  ];
  const ids = steps
    .toSorted((one, other) => one.n - other.n)
    .flatMap(({ step, leg }) => cautionsBefore(story, step, leg));
  return [...new Set(ids)].flatMap((id) => {
    const caution = fromLegs(story, ({ shop }) => shop.cautions[id]);
    const steps = ids.filter((one) => one === id).length;
    return caution === undefined ? [] : [{ id, caution, steps }];
  });
}

const hazardOf = ({ hazard }: Caution): string => hazard.replace(/[?.:]$/, '');

/** So many that can maim or kill are told in a line each before the story: those of the most steps. */
const mostBefore = 3;

/** Before the story: what can maim on this job, in short, and where all of it stands in full. */
export function dangerBlocks(story: Story): readonly Block[] {
  const all = cautionsOf(story);
  const grave = all.filter(({ caution }) => caution.acknowledge);
  if (all.length === 0) return [];
  const first = grave.toSorted((one, other) => other.steps - one.steps).slice(0, mostBefore);
  const lines = first.map(({ caution }) => `${hazardOf(caution)}: ${firstSentence(caution.text)}`);
  const others = all
    .filter((one) => !first.includes(one))
    .map(({ caution }) => asClause(hazardOf(caution)));
  const more =
    others.length === 0
      ? 'All of it stands in full at the end.'
      : lines.length === 0
        ? sentence(`${joined(others)}: in full at the end`)
        : sentence(`all of it stands in full at the end, with ${joined(others)}`);
  return [
    { kind: 'warning', name: 'before any of this is done', text: [...lines, more].join(' ') },
  ];
}

const firstSentence = (text: string): string => /^.*?[.!?](?=\s|$)/.exec(text)?.[0] ?? text;

const deferral =
  "The vehicle's own manual, local rules and licensed practice come before anything said here. What was right on this vehicle need not be right on another.";

/** At the end: every caution of the steps taken, whole, with who is to be asked before this page. */
export function cautionBlocks(story: Story): readonly Block[] {
  const items = cautionsOf(story).map(
    ({ caution }) => `${hazardOf(caution)}: ${withDefer(caution)}`,
  );
  return [
    heading('Cautions in full, and who comes first'),
    ...(items.length === 0 ? [] : [{ kind: 'list' as const, items, numbered: false }]),
    paragraph(deferral),
  ];
}

/** A caution, and who is to be asked before this page. */
const withDefer = ({ text, defer }: Caution): string =>
  defer === undefined ? text : `${text} Ask first: ${defer.replace(/\.$/, '')}.`;
