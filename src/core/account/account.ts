import { wayMermaid } from '../drawing/mermaid.ts';
import { triageOf } from '../session/triage.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { Story } from '../session/story.ts';
import { count } from '../text.ts';
import { heading, paragraph, type Block } from './block.ts';
import { apartBlocks } from './blocks/apart.ts';
import { cautionBlocks, dangerBlocks } from './blocks/cautions.ts';
import { costBlocks } from './blocks/costs.ts';
import { frontMatter } from './blocks/front-matter.ts';
import { withGlossary } from './blocks/glossary.ts';
import { ledgerBlocks } from './blocks/ledger.ts';
import { roadBlocks } from './blocks/road.ts';
import {
  baselineBlocks,
  proofBlocks,
  readingBlocks,
  repairBlocks,
  toDoBlocks,
  unsafeBlocks,
} from './blocks/tables.ts';
import {
  accountContext,
  accountTitle,
  type AccountContext,
  type AccountOptions,
} from './context.ts';
import { showMarkdown } from './forms/markdown.ts';
import { complaintBlocks } from './opening/complaint.ts';
import { logLine } from './opening/log-line.ts';
import { practiceLine } from './opening/practice.ts';
import { totalBlocks } from './opening/totals.ts';
import { vehicleBlocks } from './opening/vehicle.ts';
import { wayOf } from './outcome-steps.ts';
import { picturesOf, type Picture } from './pictures.ts';
import type { Beside } from './story/beside.ts';
import { storyBlocks } from './story/story.ts';
import { clockOddities } from '../session/time.ts';
import { sentence } from './words/wording.ts';

/** What the account must say of the record itself. */
export type Provenance = {
  readonly events: number;
  /** Lines that were torn or altered and so passed over. */
  readonly passedOver: number;
  /** What must be known of the record before anything that stands in it. */
  readonly warning?: string | undefined;
  readonly link: string;
};

/** An account: its pieces, the same as markdown, and its pictures by file name. */
export type Written = {
  readonly blocks: readonly Block[];
  readonly frontMatter: string;
  readonly markdown: string;
  readonly pictures: Pictures;
};

type Pictures = { readonly [file: string]: string };

export type WriteOptions = AccountOptions & { readonly frontMatter?: boolean };

/** The whole account of a story; the same story gives the same bytes, in every zone. */
export function writeUp(story: Story, provenance: Provenance, options: WriteOptions = {}): Written {
  const context = accountContext(story, options);
  const drawn = options.pictures !== undefined && context.length === 'full';
  const pictures = drawn ? picturesOf(story, context.history) : [];
  const first = [provenance.warning, practiceLine(story)]
    .filter((line) => line !== undefined)
    .map(paragraph);
  const head = options.frontMatter === true ? frontMatter(context) : '';
  const blocks = [...first, ...outline(context, provenance, pictures)];
  return {
    blocks,
    frontMatter: head,
    markdown: `${head}${showMarkdown(blocks)}`,
    pictures: Object.fromEntries(pictures.map(({ file, svg }) => [file, svg])),
  };
}

/** The account as blocks, from the complaint to the closing link of its record. */
function outline(
  context: AccountContext,
  provenance: Provenance,
  pictures: readonly Picture[],
): readonly Block[] {
  const { length } = context;
  if (length === 'line') return [paragraph(logLine(context))];
  const opening = openingOf(context);
  if (length === 'short') return [...opening, paragraph(linkWords(provenance))];
  const { story } = context;
  const told: readonly Block[] = [
    ...opening,
    ...dangerBlocks(story),
    heading('How it went'),
    ...storyBlocks(context, pictures.map(pictureBeside(context))),
    ...repairBlocks(story),
    ...costBlocks(story),
    ...proofBlocks(context),
    ...apartBlocks(story),
    ...roadBlocks(story),
    ...baselineBlocks(story),
    ...readingBlocks(context),
    ...ledgerBlocks(story),
    ...chartBlocks(context),
    ...cautionBlocks(story),
  ];
  // The shop knows its words; a stranger may not.
  const explained = context.audience === 'reader' ? withGlossary(told) : told;
  return [...explained, ...closing(context, provenance)];
}

const unfinished = 'Unfinished: the job is still open, and more may come.';

/** The first screenful: the vehicle, each complaint to its end, what it took, what is still to do. */
const openingOf = (context: AccountContext): readonly Block[] => [
  { kind: 'title', text: accountTitle(context) },
  ...unsafeBlocks(context.story),
  ...(context.story.closed === undefined ? [paragraph(unfinished)] : []),
  ...complaintBlocks(context),
  ...(context.length === 'short' ? [] : vehicleBlocks(context)),
  ...totalBlocks(context),
  ...toDoBlocks(context),
];

/** The way as a chart, where there is no picture of it. */
const chartBlocks = ({ story, folder }: AccountContext): readonly Block[] =>
  folder !== undefined
    ? []
    : [heading('The way as a chart'), { kind: 'chart', text: wayMermaid(wayOf(story)) }];

const pictureBeside =
  ({ folder, drawnAs }: AccountContext) =>
  ({ file, caption, at }: Picture): Beside => ({
    at,
    block: { kind: 'picture', file: `${folder}/${file.replace(/svg$/, drawnAs)}`, caption },
  });

const endings = {
  fixed: 'as fixed',
  'handed-on': 'by handing the vehicle on',
  'given-up': 'without a cure',
  'not-reproduced': 'since the complaint did not show',
} as const;

const endingWords = (story: Story, as: keyof typeof endings): string =>
  as === 'handed-on' && triageOf(story) !== undefined
    ? 'by handing the vehicle to inspection'
    : endings[as];

/** Times of day that do not follow one another are said; minutes come from the machine's uptime. */
function clockWords({ entries }: Story): string {
  const changed = clockOddities(entries.map(({ event }) => event)).filter(
    ({ kind }) => kind === 'clock-changed',
  );
  const after = changed.map(({ after: n }) => n).join(', ');
  return changed.length === 0
    ? ''
    : ` The clock of the machine was set while the work went on (after event ${after}): times of day before and after do not belong to one clock, minutes are right.`;
}

const linkWords = ({ link }: Provenance): string => `The record's closing link is ${link}.`;

const withoutTree =
  ' What no tree is about was looked for by checks and causes in words of our own: nobody gave odds, so no chances are told of it.';

function closing({ story, audience }: AccountContext, provenance: Provenance): readonly Block[] {
  const { closed } = story;
  const ended =
    closed === undefined
      ? 'This session is still open.'
      : sentence(
          `This session was closed ${endingWords(story, closed.as)}${closed.text === undefined || closed.text === '' ? '' : `: ${closed.text}`}`,
        );
  const passed =
    provenance.passedOver === 0
      ? ''
      : `; ${count(provenance.passedOver, 'line')} of it could not be read and had to be passed over`;
  const names =
    audience === 'reader'
      ? ' The names of the vehicle and of its people are left out; look the quoted notes over for plates and places before this goes to strangers.'
      : '';
  return [
    heading('About this account'),
    paragraph(
      `${ended}${story.legs.some(({ tree }) => isOwn(tree)) ? withoutTree : ''} It was written from a record of ${count(provenance.events, 'event')}${passed}.${clockWords(story)}${names} ${linkWords(provenance)}`,
    ),
  ];
}
