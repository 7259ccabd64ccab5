import { sum } from '../sum.ts';
import { count } from '../text.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { End } from './job.ts';
import type { CauseCount, CheckMinutes, ComplaintHistory, History } from './history.ts';

/** So many sessions are named, the last of them as how many more. */
const mostNamed = 6;
/** Checks told of a complaint: those with the most measures. */
const mostChecks = 8;

/** How a complaint without proof ended. */
const endWords: Readonly<Record<Exclude<End, 'proven'>, string>> = {
  open: 'still open',
  fixed: 'closed as fixed, never proven',
  'handed-on': 'handed on',
  'given-up': 'given up',
  'not-reproduced': 'not to be reproduced',
};

/** Causes told of a complaint where there are several complaints. */
const mostInShort = 3;

/** The history of a folder of jobs, as lines: of one complaint whole, of several the commonest causes. */
export function historyLines(history: History): readonly string[] {
  const { sessions, from, to, complaints, apart } = history;
  const whole = complaints.length === 1;
  const between =
    from === undefined || to === undefined ? '' : `, ${from.slice(0, 10)} to ${to.slice(0, 10)}`;
  return [
    `${count(sessions, 'session')}${between}.`,
    ...apart.map(
      ({ why, sessions: names }) => `Not counted: ${names.length} ${why} (${namesOf(names)}).`,
    ),
    ...complaints.flatMap((one) => ['', ...(whole ? complaintLines(one) : shortLines(one))]),
    ...(complaints.some(({ causes }) => causes.some(({ jobs }) => !Number.isInteger(jobs)))
      ? ['', 'Parts of a job: several things were mended before one proof, and share it.']
      : []),
    ...(complaints.length > 1
      ? ['', '"droplight history TREE" tells of one the minutes, and what did not help.']
      : []),
  ];
}

/** What stands of a complaint among others. */
function shortLines({
  tree,
  title,
  proven,
  causes,
  notProven,
}: ComplaintHistory): readonly string[] {
  const others = causes.slice(mostInShort);
  const not = sum(notProven.map(({ sessions }) => sessions.length));
  const left = not === 0 ? '' : `, ${not} not`;
  return [
    `${titleWords(title, tree)}: ${provenWords(proven)}${left}`,
    ...causes.slice(0, mostInShort).map((cause) => causeWords(cause, tree, proven)),
    ...(others.length === 0
      ? []
      : [
          `${figure(sum(others.map(({ jobs }) => jobs))).padStart(6)}  ${count(others.length, 'other thing')}`,
        ]),
  ];
}

const titleWords = (title: string, tree: string): string =>
  `${title} (${isOwn({ id: tree }) ? 'no tree' : tree})`;

function complaintLines(one: ComplaintHistory): readonly string[] {
  const { tree, title, proven, causes, notProven, checks, noHelp } = one;
  return [
    `${titleWords(title, tree)}: ${provenWords(proven)}`,
    ...causes.map((cause) => causeWords(cause, tree, proven)),
    ...notProven.map(
      ({ end, sessions }) =>
        `  Not counted: ${sessions.length} ${endWords[end]} (${namesOf(sessions)})`,
    ),
    ...(noHelp.length === 0 ? [] : ['  Did not help:']),
    ...noHelp.map(
      ({ name, failed, tried, parts }) =>
        `    ${failed} of ${tried} tried: ${name}${parts.length === 0 ? '' : `; fitted: ${fittedWords(parts)}`}`,
    ),
    ...(checks.length === 0 ? [] : ['  Minutes: took (least to most), the tree says, times']),
    ...checks.slice(0, mostChecks).map(minuteWords),
    ...(checks.length > mostChecks
      ? [`    and ${count(checks.length - mostChecks, 'more check')}: --json has all`]
      : []),
  ];
}

const provenWords = (proven: number): string =>
  proven === 0 ? 'never proven' : `${count(proven, 'job')} proven`;

/** `    12.5  41 % (tree 18 %)  Fuse link burnt`; a cause of another tree says where it was found. */
function causeWords(cause: CauseCount, own: string, proven: number): string {
  const { name, jobs, tree, share } = cause;
  const said = share === undefined ? '' : ` (tree ${percent(share)})`;
  const led = tree === own ? '' : `, found by ${tree}`;
  return `${figure(jobs).padStart(6)}  ${`${percent(jobs / proven)}${said}`.padEnd(18)}${name}${led}`;
}

function minuteWords({ name, planned, times, median, least, most }: CheckMinutes): string {
  const spread = times === 1 ? '' : `(${figure(least)} to ${figure(most)})`;
  return `${figure(median).padStart(6)} ${spread.padEnd(15)}${figure(planned).padStart(4)}${`${times}x`.padStart(6)}  ${name}`;
}

/** `3 x fuse link, gasket`. */
const fittedWords = (parts: readonly string[]): string =>
  namesOf(
    [...Map.groupBy(parts, (part) => part)].map(([part, same]) =>
      same.length === 1 ? part : `${same.length} x ${part}`,
    ),
  );

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** One digit behind the point at most. */
const figure = (value: number): string => String(Math.round(value * 10) / 10);

const namesOf = (names: readonly string[]): string =>
  names.length <= mostNamed
    ? names.join(', ')
    : `${names.slice(0, mostNamed - 1).join(', ')} and ${names.length - mostNamed + 1} more`;
