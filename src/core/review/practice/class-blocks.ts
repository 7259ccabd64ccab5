import { heading, paragraph, type Block } from '../../account/block.ts';
import { count } from '../../text.ts';
import type { ClassFault, Member } from './class.ts';

/** What is known of each member, in the order of the columns. */
const columns: readonly (readonly [name: string, of: (member: Member) => string | number])[] = [
  ['who', ({ who, session }) => (who === '' ? session : who)],
  ['end', ({ end }) => end],
  ['minutes', ({ minutes }) => Math.round(minutes)],
  ['checks', ({ checks }) => checks],
  ['the right cause led after check', ({ led }) => led ?? '–'],
  ['repairs', ({ repairs }) => repairs],
  ['needless', ({ needless }) => needless ?? '–'],
  ['hints', ({ hints }) => hints],
];

/** Those who had the same fault side by side: how each came to its end, and in which order each looked. */
export function classBlocks(faults: readonly ClassFault[]): readonly Block[] {
  return [
    { kind: 'title', text: 'Practice, side by side' },
    ...faults.flatMap(faultBlocks),
    heading('How to read this'),
    paragraph(
      'Minutes are the planned ones, hints among them. The right cause led when, by all that had been found, nothing else was likelier. A needless repair is one of a cause that was not hidden. The vehicle was the same for all: on the same check it shows the same, unless something was mended before.',
    ),
  ];
}

function faultBlocks(fault: ClassFault): readonly Block[] {
  const { title, set, hidden, members } = fault;
  const number = set === undefined ? '' : `, number ${set.number} of "${set.name}"`;
  const told =
    hidden === undefined
      ? 'Nobody has come to the end yet: what is hidden stays untold.'
      : `Hidden: ${hidden}.`;
  const best = shortest(members);
  const quickest = best === undefined ? '' : ` The shortest way to the proof took ${best} minutes.`;
  return [
    heading(`${title}${number}`),
    paragraph(`${told} ${count(members.length, 'practice')}.${quickest}`),
    {
      kind: 'table',
      head: columns.map(([name]) => name),
      rows: members.map((member) => columns.map(([, of]) => String(of(member)))),
    },
    ...(members.every(({ answers }) => answers.length === 0)
      ? []
      : [heading('In which order each looked', 3), orderTable(members)]),
  ];
}

function shortest(members: readonly Member[]): number | undefined {
  const proven = members.filter(({ end }) => end === 'proven').map(({ minutes }) => minutes);
  return proven.length === 0 ? undefined : Math.round(Math.min(...proven));
}

/** Each check that somebody made, with its place in everybody's order and what it showed. */
function orderTable(members: readonly Member[]): Block {
  const asks = new Map(
    members.flatMap(({ answers }) => answers.map(({ check, ask }) => [check, ask] as const)),
  );
  return {
    kind: 'table',
    head: ['check', ...members.map(({ who, session }) => (who === '' ? session : who))],
    rows: [...asks].map(([check, ask]) => [
      ask,
      ...members.map(({ answers }) => placesOf(answers, check)),
    ]),
  };
}

const placesOf = (answers: Member['answers'], check: string): string => {
  const places = answers.flatMap((answer, at) =>
    answer.check === check ? [`${at + 1}. ${answer.shown}`] : [],
  );
  return places.length === 0 ? '–' : places.join('; ');
};

/** The first table of every fault as comma-separated values, a member a line. */
export function classCsv(faults: readonly ClassFault[]): string {
  const head = ['tree', 'set', 'number', 'hidden', 'session', ...columns.map(([name]) => name)];
  const lines = faults.flatMap((fault) =>
    fault.members.map((member) => [
      fault.tree,
      fault.set?.name ?? '',
      fault.set?.number ?? '',
      (fault.causes ?? []).join(' '),
      member.session,
      ...columns.map(([, of]) => of(member)),
    ]),
  );
  return [head, ...lines].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
}

/** A cell as RFC 4180 has it; a text that a sheet would take for a formula gets an apostrophe. */
function cell(value: string | number): string {
  const text = typeof value === 'number' ? String(value) : value.replace(/^[=+\-@\t\r]/, "'$&");
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
