import wrapAnsi from 'wrap-ansi';
import { nextsOf, parseNext } from '../tree/way/next.ts';
import type { Lead, Result, Tree } from '../tree/model.ts';
import { spanBetween, spanOhms } from '../feed/path.ts';
import { showReading } from '../trade/units/units.ts';

/** A page for the wall: the walk of a tree and its feed path, as lines of text. */
export function treePage(tree: Tree): readonly string[] {
  return [
    tree.title,
    '='.repeat(Math.min(78, tree.title.length)),
    ...folded(tree.complaint.say, 78),
    '',
    'THE WALK',
    ...wayOrder(tree).flatMap((id, index) => checkLines(tree, id, index + 1)),
    '',
    'THE CAUSES',
    ...Object.values(tree.causes).flatMap((cause) => [
      ...folded(
        `- ${cause.name}${cause.where === undefined ? '' : ` (${cause.where})`}: repair about ${cause.repair.minutes} min`,
        78,
        '  ',
      ),
    ]),
    ...feedLines(tree),
    '',
    "The vehicle's own manual, local rules and licensed practice come first.",
  ];
}

/** Checks in the order of the tree's own way: the complaint, baseline, then depth by depth. */
export function wayOrder(tree: Tree): readonly string[] {
  const seen = new Set<string>();
  const queue = [tree.complaint.confirm, ...tree.baseline, tree.start];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    if (seen.has(id)) continue;
    seen.add(id);
    for (const lead of (tree.checks[id]?.results ?? []).flatMap(nextsOf).map(parseNext))
      if (lead.kind === 'check') queue.push(lead.check);
  }
  return [...seen, ...Object.keys(tree.checks).filter((id) => !seen.has(id))];
}

function checkLines(tree: Tree, id: string, number: number): readonly string[] {
  const check = tree.checks[id];
  if (check === undefined) return [];
  const head = `${String(number).padStart(2)}. ${check.ask} [${check.minutes} min]`;
  return [
    ...folded(head, 78, '    '),
    ...check.results.flatMap((result) =>
      folded(`      ${resultWords(tree, result)}`, 78, '        '),
    ),
  ];
}

const resultWords = (tree: Tree, result: Result): string =>
  `${result.label} -> ${[
    ...(result.leads ?? []).map(
      (lead) => `${nextWords(tree, lead.go)} where ${ifWords(tree, lead)}`,
    ),
    nextWords(tree, result.next, result.reason),
  ].join('; else ')}`;

/** What must have been shown for a lead to hold, in words. */
export const ifWords = ({ checks }: Tree, lead: Lead): string =>
  Object.entries(lead.if)
    .map(([id, wanted]) => {
      const labels = (checks[id]?.results ?? []).filter((one) => wanted.includes(one.id));
      return `"${checks[id]?.ask ?? id}" showed ${labels.map(({ label }) => label).join(' or ')}`;
    })
    .join(' and ');

/** Where a result leads, in words. */
function nextWords(tree: Tree, next: string | undefined, reason?: string): string {
  const lead = next === undefined ? undefined : parseNext(next);
  if (lead === undefined) return 'the next check not done yet';
  if (lead.kind === 'check') return `${wayOrder(tree).indexOf(lead.check) + 1}`;
  if (lead.kind === 'cause') return tree.causes[lead.cause]?.name ?? lead.cause;
  if (lead.kind === 'tree') return `another complaint: ${lead.tree.replaceAll('-', ' ')}`;
  return `stop${reason === undefined ? '' : `: ${reason}`}`;
}

function feedLines({ feed, causes }: Tree): readonly string[] {
  if (feed === undefined) return [];
  const causeOn = (from: string, to: string): string => {
    const names = Object.values(causes)
      .filter(
        ({ span }) =>
          span !== undefined &&
          spanBetween(feed, span)?.from === from &&
          spanBetween(feed, span)?.to === to,
      )
      .map(({ name }) => name);
    return names.length === 0 ? '' : `  <- ${names.join('; ')}`;
  };
  return [
    '',
    'THE FEED PATH (from the battery outward; sound ohms of each span)',
    ...feed.spans.flatMap((span) =>
      folded(
        `  ${feed.stations[span.from]?.name ?? span.from} -- ${feed.stations[span.to]?.name ?? span.to}: ${showReading(spanOhms(span) * 1000, 'mohm')}${causeOn(span.from, span.to)}`,
        78,
        '      ',
      ),
    ),
  ];
}

/** Text broken at words into lines of at most so many columns; later ones are set in. */
export function folded(text: string, width: number, inset = ''): readonly string[] {
  const lead = /^\s*/.exec(text)?.[0] ?? '';
  const words = text.replace(/\s+/g, ' ').trim();
  const [first = ''] = wrapAnsi(words, width - lead.length).split('\n');
  const rest = words.slice(first.length).trim();
  if (rest === '') return first === '' ? [] : [lead + first];
  const others = wrapAnsi(rest, width - inset.length).split('\n');
  return [lead + first, ...others.map((line) => inset + line)];
}
