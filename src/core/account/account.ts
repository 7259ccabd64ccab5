import { wayMermaid } from '../drawing/mermaid.ts';
import { waySteps } from '../drawing/way-steps.ts';
import { triageOf } from '../session/triage.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { Story } from '../session/story.ts';
import { count } from '../text.ts';
import { knownBlocks, vehicleBlocks } from './blocks/beginning.ts';
import { heading, paragraph, type Block } from './block.ts';
import { ToldCautions } from './blocks/cautions.ts';
import { costBlocks } from './blocks/costs.ts';
import { withGlossary } from './blocks/glossary.ts';
import { ledgerBlocks } from './blocks/ledger.ts';
import { wayBlocks } from './blocks/narrative.ts';
import {
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
import { frontMatter } from './blocks/front-matter.ts';
import { showMarkdown } from './markdown.ts';
import { picturesOf, type Picture } from './pictures.ts';
import { apartBlocks } from './blocks/apart.ts';
import { roadBlocks } from './blocks/road.ts';
import { openingBlocks } from './blocks/opening.ts';
import { verdictBlocks } from './blocks/verdict.ts';
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

/** An account ready for the disk: one text, and its pictures by file name. */
export type Written = {
  readonly markdown: string;
  readonly pictures: Pictures;
};

export type Pictures = { readonly [file: string]: string };

export type WriteOptions = AccountOptions & { readonly frontMatter?: boolean };

/** The whole account of a story; the same story gives the same bytes, in every zone. */
export function writeUp(story: Story, provenance: Provenance, options: WriteOptions = {}): Written {
  const context = accountContext(story, options);
  const pictures = options.pictures === undefined ? [] : picturesOf(story, context.history);
  const first = provenance.warning === undefined ? [] : [paragraph(provenance.warning)];
  const head = options.frontMatter === true ? frontMatter(context) : '';
  return {
    markdown: `${head}${showMarkdown([...first, ...outline(context, provenance, pictures)])}`,
    pictures: Object.fromEntries(pictures.map(({ file, svg }) => [file, svg])),
  };
}

/** The account as blocks, from the complaint to the closing link of its record. */
function outline(
  context: AccountContext,
  provenance: Provenance,
  pictures: readonly Picture[],
): readonly Block[] {
  const { story } = context;
  const cautions = new ToldCautions(story);
  const way = wayBlocks(context, cautions);
  return [
    ...withGlossary([
      { kind: 'title', text: accountTitle(context) },
      ...unsafeBlocks(story),
      ...openingBlocks(context),
      ...vehicleBlocks(context),
      ...knownBlocks(context),
      heading('The way'),
      ...way,
      ...pictureBlocks(context, pictures),
      ...verdictBlocks(context),
      ...repairBlocks(story),
      ...apartBlocks(story),
      ...costBlocks(story),
      ...proofBlocks(context),
      ...roadBlocks(story),
      ...toDoBlocks(context),
      ...cautionBlocks(cautions),
      ...readingBlocks(context),
      ...ledgerBlocks(story),
      heading('The way as a chart'),
      { kind: 'chart', text: wayMermaid(waySteps(story)) },
    ]),
    ...closing(context, provenance),
  ];
}

const pictureBlocks = (
  { folder }: AccountContext,
  pictures: readonly Picture[],
): readonly Block[] =>
  pictures.map(({ file, caption }) => ({ kind: 'picture', file: `${folder}/${file}`, caption }));

const deferral =
  "The vehicle's own manual, local rules and licensed practice come before anything said here. What was right on this vehicle need not be right on another.";

const cautionBlocks = (cautions: ToldCautions): readonly Block[] => [
  heading('Cautions, and who comes first'),
  ...cautions.atTheEnd(),
  paragraph(deferral),
];

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
      `${ended}${story.legs.some(({ tree }) => isOwn(tree)) ? withoutTree : ''} It was written from a record of ${count(provenance.events, 'event')}${passed}.${clockWords(story)}${names} The record's closing link is ${provenance.link}.`,
    ),
  ];
}
