import type { Tree } from '../tree/model.ts';
import { count } from '../text.ts';
import { fitText, textWidth } from './fit-text.ts';
import { faint, ink, line, pageWidth, panel, showPage, tint } from './page.ts';
import { treeCards, type Card, type CardRow } from './tree-cards.ts';
import { inLanes, type Bus, type LaidBus } from './tree-lanes.ts';
import { boxAt, circleAt, element, textAt } from './xml.ts';

const cardLeft = 18;
const cardWidth = 272;
const cardRight = cardLeft + cardWidth;
const chipLeft = cardRight + 14;
/** The lanes stand at the right edge; what a row leads to has the room before them. */
const laneRight = pageWidth - 16;
const laneWidth = 9;
const widestLanes = 110;
const lead = 15;
const rowSize = 11;
const rowLead = 14;
const gap = 18;
const mostLines = 12;

type LaidRow = CardRow & {
  readonly top: number;
  readonly lines: readonly string[];
  readonly chip: readonly string[];
  readonly height: number;
};
type LaidCard = Omit<Card, 'rows'> & {
  readonly top: number;
  readonly height: number;
  readonly titleLines: readonly string[];
  readonly rows: readonly LaidRow[];
};

/**
 * A tree as boxes and edges from top to bottom: a card a check, a row a result, beside it the cause
 * that it points to; wires to other checks run at the right, all those to one check in one lane.
 */
export function treeSvg(tree: Tree): string {
  const cards = treeCards(tree);
  const chipWidth = laneRight - widestLanes - chipLeft - 4;
  const complaint = fitText(tree.complaint.say, { width: pageWidth - 36, lines: mostLines });
  const laid = layCards(cards, 54 + complaint.length * lead, chipWidth);
  const buses = inLanes(busesTo(laid));
  const lanes = Math.max(0, ...buses.map(({ lane }) => lane + 1));
  const spacing = Math.min(laneWidth, widestLanes / Math.max(1, lanes));
  const foot = Math.max(...laid.map(({ top, height }) => top + height));
  const xOf = (lane: number): number => laneRight - (lanes - 1 - lane) * spacing;
  return showPage({ title: tree.title, description: describe(tree, cards), height: foot + 44 }, [
    ...complaint.map((text, index) => textAt(18, 48 + index * lead, text, { fill: faint })),
    ...buses.flatMap((bus) => wires(bus, xOf(bus.lane))),
    ...laid.flatMap((card) => cardShapes(card, laid, chipWidth)),
    textAt(18, foot + 26, reading, { 'font-size': 10, fill: faint }),
  ]);
}

const reading =
  'A row is what a check may show. Round boxes are causes; a wire leads to the check of its number.';

function layCards(cards: readonly Card[], from: number, chipWidth: number): readonly LaidCard[] {
  let top = from;
  return cards.map((card) => {
    const titleLines = fitText(card.title, {
      width: cardWidth - 20,
      lines: mostLines,
      weight: 'bold',
    });
    let y = top + 10 + titleLines.length * lead + (card.part === '' ? 0 : rowLead);
    const rows = card.rows.map((row) => {
      const lines = fitText(row.label, { width: cardWidth - 24, lines: mostLines, size: rowSize });
      const chip =
        row.words === ''
          ? []
          : fitText(row.words, { width: chipWidth - 14, lines: mostLines, size: rowSize });
      const height = Math.max(lines.length, chip.length) * rowLead + 10;
      const laid = { ...row, top: y, lines, chip, height };
      y += height;
      return laid;
    });
    const laid = { ...card, top, height: y - top, titleLines, rows };
    top = y + gap;
    return laid;
  });
}

const entryOf = ({ top }: LaidCard): number => top + 14;
const middleOf = ({ top, height }: LaidRow): number => top + height / 2;

const busesTo = (cards: readonly LaidCard[]): readonly Bus[] =>
  cards.flatMap((card) => {
    const from = cards.flatMap(({ rows }) =>
      rows.filter(({ next }) => next?.kind === 'check' && next.check === card.id).map(middleOf),
    );
    return from.length === 0 ? [] : [{ target: card.id, entry: entryOf(card), from }];
  });

/** The wires of one bus; a halo of the ground's color keeps crossing wires apart. */
function wires({ entry, from, top, foot }: LaidBus, x: number): readonly string[] {
  const path = [
    `M${x} ${top} V${foot}`,
    `M${x} ${entry} H${cardRight + 5}`,
    ...from.map((y) => `M${cardRight} ${y} H${x}`),
  ].join(' ');
  return [
    element('path', { d: path, stroke: panel, 'stroke-width': 3.4, fill: 'none' }),
    element('path', { d: path, stroke: faint, 'stroke-width': 1.1, fill: 'none' }),
    ...from.map((y) => circleAt(x, y, 1.9, { fill: faint })),
    element('path', {
      d: `M${cardRight} ${entry} l8 -4 v8 Z`,
      fill: ink,
    }),
  ];
}

function cardShapes(
  card: LaidCard,
  all: readonly LaidCard[],
  chipWidth: number,
): readonly string[] {
  const { top, height, titleLines, part, rows } = card;
  return [
    boxAt([cardLeft, top, cardWidth, height], {
      rx: 4,
      fill: panel,
      stroke: ink,
      'stroke-width': 1.1,
    }),
    ...titleLines.map((text, index) =>
      textAt(cardLeft + 10, top + 17 + index * lead, text, { 'font-weight': 'bold' }),
    ),
    ...(part === ''
      ? []
      : [
          textAt(cardLeft + 10, top + 15 + titleLines.length * lead, part, {
            'font-size': 10,
            fill: faint,
          }),
        ]),
    ...rows.flatMap((row) => [
      element('path', {
        d: `M${cardLeft} ${row.top} h${cardWidth}`,
        stroke: line,
        'stroke-width': 0.6,
      }),
      ...row.lines.map((text, index) =>
        textAt(cardLeft + 14, firstLine(row, row.lines) + index * rowLead, text, {
          'font-size': rowSize,
        }),
      ),
      ...(row.chip.length === 0 ? [numberAt(row, all)] : chipShapes(row, chipWidth)),
    ]),
  ];
}

/** The baseline of the first line of text that stands in the middle of a row. */
const firstLine = (row: LaidRow, lines: readonly string[]): number =>
  middleOf(row) - ((lines.length - 1) * rowLead) / 2 + 4;

/** The number of the check that a row leads to, on its wire. */
function numberAt(row: LaidRow, all: readonly LaidCard[]): string {
  const { next } = row;
  const place = all.findIndex(({ id }) => next?.kind === 'check' && next.check === id);
  if (place === -1) throw new Error(`A row leads to a check that has no card: ${row.label}`);
  const text = `to ${place + 1}`;
  const y = middleOf(row);
  return (
    boxAt([chipLeft - 3, y - 7, textWidth(text, 10, 'bold') + 6, 14], { fill: panel }) +
    textAt(chipLeft, y + 3.6, text, { 'font-size': 10, 'font-weight': 'bold' })
  );
}

const chipLooks = {
  cause: { rx: 9, fill: tint, stroke: ink },
  tree: { rx: 2, fill: panel, stroke: ink, 'stroke-dasharray': '4 3' },
  stop: { rx: 2, fill: panel, stroke: line },
};

function chipShapes(row: LaidRow, chipWidth: number): readonly string[] {
  const kind = row.next?.kind;
  const height = row.chip.length * rowLead + 6;
  const y = middleOf(row);
  const texts = row.chip.map((text, index) =>
    textAt(chipLeft + 7, firstLine(row, row.chip) + index * rowLead, text, {
      'font-size': rowSize,
      fill: kind === undefined ? faint : ink,
    }),
  );
  if (kind === undefined || kind === 'check') return texts;
  return [
    element('path', { d: `M${cardRight} ${y} H${chipLeft}`, stroke: ink, 'stroke-width': 1.1 }),
    boxAt([chipLeft, y - height / 2, chipWidth, height], chipLooks[kind]),
    ...texts,
  ];
}

const describe = ({ causes, complaint }: Tree, cards: readonly Card[]): string =>
  `${complaint.say} ${count(cards.length, 'check')} and ${count(Object.keys(causes).length, 'cause')}: ${cards
    .map(({ title }) => title)
    .join(' ')}`;
