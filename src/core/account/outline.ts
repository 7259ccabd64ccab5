import { wayMermaid } from '../drawing/mermaid.ts';
import { waySteps } from '../drawing/way-steps.ts';
import type { Story } from '../session/story.ts';
import { count } from '../text.ts';
import { knownBlocks, summaryBlock, vehicleBlocks } from './blocks/beginning.ts';
import type { Block } from './block.ts';
import { CautionTelling } from './blocks/cautions.ts';
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
import { makeTeller, type AccountOptions, type Teller } from './context.ts';
import { verdictBlocks } from './blocks/verdict.ts';
import { sentence } from './words/wording.ts';

/** What the account must say of the record itself. */
export type Record = {
  readonly events: number;
  /** Lines that were torn or altered and so passed over. */
  readonly passedOver: number;
  readonly link: string;
};

/** The account of a session as blocks, from the complaint to the closing link of its record. */
export const outline = (
  story: Story,
  record: Record,
  options: AccountOptions = {},
): readonly Block[] => outlineBy(makeTeller(story, options), record);

/** The same, for a caller that has the teller already. */
export function outlineBy(teller: Teller, record: Record): readonly Block[] {
  const { story } = teller;
  const cautions = new CautionTelling(story);
  const way = wayBlocks(teller, cautions);
  return [
    ...withGlossary([
      { kind: 'title', text: accountTitle(teller) },
      ...unsafeBlocks(story),
      summaryBlock(teller),
      ...vehicleBlocks(teller),
      ...knownBlocks(teller),
      { kind: 'heading', text: 'The way' },
      ...way,
      ...pictureBlocks(teller),
      ...verdictBlocks(teller),
      ...repairBlocks(story),
      ...proofBlocks(teller),
      ...toDoBlocks(teller),
      ...cautionBlocks(cautions),
      ...readingBlocks(teller),
      ...ledgerBlocks(story),
      { kind: 'heading', text: 'The way as a chart' },
      { kind: 'chart', text: wayMermaid(waySteps(story)) },
    ]),
    ...closing(teller, record),
  ];
}

/** A stranger is told what was wrong; a mentor knows the vehicle by its name. */
export const accountTitle = ({ story, audience }: Teller): string => {
  const title = story.legs[0]?.tree.title ?? story.header.tree;
  return audience === 'reader' ? title : `${story.header.vehicle.name}: ${title}`;
};

const pictureBlocks = ({ folder, pictures }: Teller): readonly Block[] =>
  pictures.map(({ file, caption }) => ({ kind: 'picture', file: `${folder}/${file}`, caption }));

const deferral =
  "The vehicle's own manual, local rules and licensed practice come before anything said here. What was right on this vehicle need not be right on another.";

const cautionBlocks = (cautions: CautionTelling): readonly Block[] => [
  { kind: 'heading', text: 'Cautions, and who comes first' },
  ...cautions.atTheEnd(),
  { kind: 'paragraph', text: deferral },
];

const endings = {
  fixed: 'as fixed',
  'handed-on': 'by handing the vehicle on',
  'given-up': 'without a cure',
  'not-reproduced': 'since the complaint did not show',
} as const;

function closing({ story, audience }: Teller, record: Record): readonly Block[] {
  const { closed } = story;
  const ended =
    closed === undefined
      ? 'This session is still open.'
      : sentence(
          `This session was closed ${endings[closed.as]}${closed.text === undefined || closed.text === '' ? '' : `: ${closed.text}`}`,
        );
  const passed =
    record.passedOver === 0
      ? ''
      : `; ${count(record.passedOver, 'line')} of it could not be read and had to be passed over`;
  const names =
    audience === 'reader'
      ? ' The names of the vehicle and of its people are left out; look the quoted notes over for plates and places before this goes to strangers.'
      : '';
  return [
    { kind: 'heading', text: 'About this account' },
    {
      kind: 'paragraph',
      text: `${ended} It was written from a record of ${count(record.events, 'event')}${passed}.${names} The record's closing link is ${record.link}.`,
    },
  ];
}
