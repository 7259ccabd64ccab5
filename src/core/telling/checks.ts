import { count } from '../text.ts';
import type { Check, Safeguard, Standing, Tree } from '../tree/model.ts';
import { parseNext } from '../tree/way/next.ts';
import type { Shop } from '../tree/shop.ts';
import { andWords, causeWords, checkWords, sentence, whenWords } from './words.ts';

/** What a check needs before its result can be read: time, what is opened, how the vehicle stands, what hurts. */
export function setUpSentences(tree: Tree, shop: Shop, check: Check): readonly string[] {
  const cautions = check.cautions.map((id) => shop.cautions[id]?.hazard ?? id);
  const named = (id: string) => shop.accesses[id]?.name ?? id;
  const opened = check.access.map(named);
  const closed = (check.shut ?? []).map(named);
  return [
    `${count(check.minutes, 'minute')}.`,
    ...(check.when === undefined ? [] : [`Only where ${whenWords(check.when)}.`]),
    ...(check.healthy === undefined ? [] : [`Healthy: ${check.healthy}${endOf(check.healthy)}`]),
    ...standingSentence(check.standing),
    ...(opened.length > 0 ? [`Opened first: ${andWords(opened)}.`] : []),
    ...(closed.length > 0 ? [`Put back first: ${andWords(closed)}.`] : []),
    ...(cautions.length > 0 ? [`Cautions: ${andWords(cautions)}.`] : ['No caution.']),
    ...gateSentences(tree, check),
  ];
}

const endOf = (text: string): string => (/[.!?]$/.test(text) ? '' : '.');

const standingSentence = (standing: Standing): readonly string[] => {
  const told = Object.entries(standing).map(([what, how]) => `${what} ${how}`);
  return told.length === 0 ? [] : [`The vehicle stands: ${told.join(', ')}.`];
};

const gateSentences = (tree: Tree, { after = {} }: Check): readonly string[] =>
  Object.entries(after).map(([id, results]) => `Only after ${shownWords(tree, id, results)}.`);

/** What a safeguard holds back, until what, and what it says of going on without. */
export function safeguardWords(tree: Tree, safeguard: Safeguard): string {
  const { before, check, shows, when, else: otherwise } = safeguard;
  const { repair = [], ...standings } = before;
  const waits = [
    ...Object.entries(standings).map(
      ([what, how = []]) => `any step with ${what} ${how.join(' or ')}`,
    ),
    ...(repair.length === 0
      ? []
      : [`the repair of ${andWords(repair.map((cause) => causeWords(tree, cause)))}`]),
  ];
  const only = when === undefined ? '' : ` (only where ${whenWords(when)})`;
  return `${sentence(andWords(waits))}${only} only after ${shownWords(tree, check, shows)}: ${otherwise}`;
}

/** That a check showed one of these results: `the search for the short showed "dark"`. */
function shownWords({ checks }: Tree, id: string, results: readonly string[]): string {
  const before = checks[id];
  const labels = results.map(
    (one) => `"${before?.results.find((result) => result.id === one)?.label ?? one}"`,
  );
  return `${before === undefined ? id : checkWords(before)} showed ${labels.join(' or ')}`;
}

/** Which result hides which where two faults are there. */
export function hidingSentence({ results }: Check): readonly string[] {
  const labels = results.map(({ label }) => `"${label}"`);
  const first = labels[0] ?? '';
  const worse = labels.slice(1);
  if (worse.length < 2)
    return [`${sentence(worse.join(''))} hides ${first}: one fault is enough to show it.`];
  return [
    `With two faults there, the last of these is what you see: ${[first, ...worse].join(', ')}.`,
  ];
}

/** Where each result leads. */
export const leadSentences = (tree: Tree, { results }: Check): readonly string[] =>
  results.map((result) => {
    const leads = (result.leads ?? []).map((lead) => {
      const asked = Object.entries(lead.if).map(([check, wanted]) =>
        shownWords(tree, check, wanted),
      );
      return `${goesWords(tree, lead.go)} where ${asked.join(' and ')}`;
    });
    const last = result.next === undefined ? 'leads nowhere' : goesWords(tree, result.next);
    const only = result.when === undefined ? '' : ` (only where ${whenWords(result.when)})`;
    return `After "${result.label}"${only} the way ${[...leads, last].join('; else ')}${
      result.reason === undefined ? '.' : `: ${result.reason}`
    }`;
  });

function goesWords(tree: Tree, text: string): string {
  const next = parseNext(text);
  if (next.kind === 'stop') return 'stops';
  if (next.kind === 'tree') return `goes over to the complaint "${next.tree}"`;
  if (next.kind === 'cause') return `condemns ${causeWords(tree, next.cause)}`;
  return `goes on to "${tree.checks[next.check]?.ask ?? next.check}"`;
}
