import type { FollowUp, Story } from '../session/story.ts';
import { clockTime } from '../session/time.ts';
import type { Block } from './block.ts';
import { askWords, checkIn, readingWords, sentence, shownWords } from './wording.ts';

/** Every finding with what was found and what a healthy vehicle shows. */
export function readingBlocks(story: Story): readonly Block[] {
  if (story.findings.length === 0) return [];
  const rows = story.findings.map((finding) => {
    const check = checkIn(story, finding.check, finding.leg);
    return [
      clockTime(finding.told ?? finding.stamp.at),
      askWords(story, finding.check, finding.leg),
      readingWords(finding),
      shownWords(story, finding),
      check?.healthy ?? check?.results[0]?.label ?? '',
    ];
  });
  return [
    { kind: 'heading', text: 'Readings and results' },
    { kind: 'table', head: ['Time', 'Check', 'Reading', 'Result', 'Healthy'], rows },
  ];
}

/** The complaint's own test before and after. */
export function proofBlocks(story: Story): readonly Block[] {
  if (story.repairs.length === 0) return [];
  const heading: Block = { kind: 'heading', text: 'The proof' };
  const proof = story.proofs.at(-1);
  if (proof === undefined)
    return [heading, { kind: 'paragraph', text: 'The repair was not put to the proof.' }];
  const repeated = new Set(
    story.findings.filter(({ repairs }) => repairs > 0).map(({ check }) => check),
  );
  const rows = [...repeated].map((check) => {
    const before = story.findings.findLast((one) => one.check === check && one.repairs === 0);
    const after = story.findings.findLast((one) => one.check === check && one.repairs > 0);
    const words = (finding: typeof before): string =>
      finding === undefined
        ? 'not taken'
        : [readingWords(finding), shownWords(story, finding)]
            .filter((part) => part !== '')
            .join(', ');
    return [askWords(story, check), words(before), words(after)];
  });
  return [
    heading,
    { kind: 'table', head: ['Check', 'Before the repair', 'After it'], rows },
    {
      kind: 'paragraph',
      text: proof.good
        ? "The complaint's own test was repeated after the repair and showed good."
        : "The complaint's own test was repeated after the repair and still showed the complaint.",
    },
  ];
}

const urgencies: Readonly<Record<FollowUp['urgency'], string>> = {
  unsafe: 'Unsafe, not to be driven',
  soon: 'Soon',
  noticed: 'Noticed',
};

/** What is left: the unsafe first, then parts and accesses, then checks that were passed over. */
export function toDoBlocks(story: Story): readonly Block[] {
  const order = Object.keys(urgencies);
  const followUps = story.followUps
    .toSorted((a, b) => order.indexOf(a.urgency) - order.indexOf(b.urgency))
    .map(({ urgency, text }) => sentence(`${urgencies[urgency]}: ${text}`));
  const leftOpen = (story.closed?.leftOpen ?? []).map((name) =>
    sentence(`Still open or off: ${name}`),
  );
  const skipped = story.skipped.map(({ check, reason }) =>
    sentence(`Not checked, ${askWords(story, check).toLowerCase()}: ${reason}`),
  );
  const items = [...followUps, ...leftOpen, ...skipped];
  return [
    { kind: 'heading', text: 'Still to do' },
    items.length === 0
      ? { kind: 'paragraph', text: 'Nothing was left to do.' }
      : { kind: 'list', items, numbered: false },
  ];
}

/** The cautions of the checks and repairs that were done, each once. */
export function cautionBlocks(story: Story): readonly Block[] {
  const ids = story.legs.flatMap(({ tree }, leg) => [
    ...story.findings
      .filter((finding) => finding.leg === leg)
      .flatMap(({ check }) => tree.checks[check]?.cautions ?? []),
    ...story.repairs
      .filter((repair) => repair.leg === leg)
      .flatMap(({ cause }) => tree.causes[cause]?.repair.cautions ?? []),
  ]);
  const items = [...new Set(ids)].flatMap((id) => {
    const caution = story.legs
      .map(({ shop }) => shop.cautions[id])
      .find((one) => one !== undefined);
    if (caution === undefined) return [];
    const defer = caution.defer === undefined ? '' : ` Defer to: ${caution.defer}.`;
    return [`${caution.hazard}: ${caution.text}${defer}`];
  });
  if (items.length === 0) return [];
  return [
    { kind: 'heading', text: 'Cautions met on the way' },
    { kind: 'list', items, numbered: false },
  ];
}
