import { good, type Parsed } from '../../problem.ts';
import { oftenWords, type Certain, type Shares } from '../written/written.ts';
import type { DraftCause, DraftResult, Rows } from './draft.ts';
import { notUnderstood } from './question.ts';
import { pick } from './read-results.ts';

type Often = keyof typeof oftenWords;
type Of = { readonly causes: readonly DraftCause[]; readonly results: readonly DraftResult[] };

/**
 * Reads which causes a check shows, parted by commas: `1`, `1+3 mostly`, `2 dead 60 low 30`. No
 * word means always; a check with several bad results wants the one that shows.
 */
export function readMarks(line: string, of: Of): Parsed<Rows> {
  if (/^(none|no)$/i.test(line)) return good({});
  const rows: Record<string, Shares> = {};
  const points = line.replaceAll(/(\s\d+),(\d)/g, '$1.$2');
  for (const entry of points.split(/\s*[,;]\s*/).filter((part) => part !== '')) {
    const read = readEntry(entry, of);
    if (read.kind === 'bad') return read;
    for (const id of read.value.causes) {
      if (rows[id] !== undefined)
        return notUnderstood(`In "${entry}" a cause comes a second time.`);
      rows[id] = read.value.shares;
    }
  }
  return good(rows);
}

function readEntry(
  entry: string,
  of: Of,
): Parsed<{ readonly causes: readonly string[]; readonly shares: Shares }> {
  const [, numbers = '', rest = ''] = /^(\d+(?:\s*(?:\+|and|&)\s*\d+)*)\s*(.*)$/i.exec(entry) ?? [];
  if (numbers === '') return notUnderstood(`"${entry}" does not begin with the number of a cause.`);
  if (/^\d+$/.test(rest) && Number(rest) <= of.causes.length)
    return notUnderstood(
      `Is ${rest} in "${entry}" a cause or a percent?`,
      `Write ${numbers}+${rest} for both causes, ${numbers} ${rest}% for the percent.`,
    );
  const causes: string[] = [];
  for (const number of numbers.split(/\D+/)) {
    const cause = of.causes[Number(number) - 1];
    if (cause === undefined)
      return notUnderstood(`There is no cause ${number}: they go from 1 to ${of.causes.length}.`);
    causes.push(cause.id);
  }
  const shares = readShares(rest, of.results);
  return shares.kind === 'bad' ? shares : good({ causes, shares: shares.value });
}

function readShares(rest: string, results: readonly DraftResult[]): Parsed<Shares> {
  const bad = results.slice(1);
  const shares: Record<string, number | Often> = {};
  let words: string[] = [];
  const add = (share: number | Often): Parsed<undefined> => {
    const result = words.length === 0 && bad.length === 1 ? bad[0] : pick(words.join(' '), results);
    if (words.length === 0 && result === undefined)
      return notUnderstood(
        `Which of these does it show: ${bad.map(({ label }) => label).join(', ')}?`,
        'Write it before the word: 2 dead mostly.',
      );
    if (result === undefined)
      return notUnderstood(
        `"${words.join(' ')}" is no result of this check, which are: ${results.map(({ label }) => label).join(', ')}.`,
      );
    words = [];
    shares[result.id] = share;
    return good(undefined);
  };
  for (const word of rest.split(' ').filter((one) => one !== '')) {
    const share = shareOf(word);
    if (share === undefined) words.push(word);
    else {
      const added = add(share);
      if (added.kind === 'bad') return added;
    }
  }
  if (words.length > 0 || Object.keys(shares).length === 0) {
    const added = add('always');
    if (added.kind === 'bad') return added;
  }
  const total = Object.values(shares).reduce<number>(
    (all, share) => all + (typeof share === 'number' ? share : 0),
    0,
  );
  return total > 100
    ? notUnderstood(`Of a hundred vehicles, ${total} are shared out.`)
    : good(shares);
}

/** A word for how often, or a percent. */
function shareOf(word: string): number | Often | undefined {
  const small = word.toLowerCase();
  if (Object.hasOwn(oftenWords, small)) return small as Often;
  const percent = /^(\d{1,3}(?:[.,]\d+)?)%?$/.exec(small)?.[1];
  const value = percent === undefined ? NaN : Number(percent.replace(',', '.'));
  return value >= 0 && value <= 100 ? value : undefined;
}

/**
 * The rows of the complaint's own test: a cause that is not named shows any of the bad results.
 * What is left of a hundred goes to the other bad results, since whoever comes has the complaint.
 */
export function complaintRows(marked: Rows, { causes, results }: Of): Rows {
  const bad = results.slice(1).map(({ id }) => id);
  const [only] = bad;
  const any: Certain | Shares =
    bad.length === 1 && only !== undefined
      ? { always: only }
      : Object.fromEntries(bad.map((id) => [id, Number((100 / bad.length).toFixed(4))]));
  const row = (shares: Shares): Certain | Shares => {
    const percents = Object.entries(shares).map(([id, share]): [string, number] => [
      id,
      typeof share === 'number' ? share : oftenWords[share],
    ]);
    const [first] = percents;
    if (percents.length === 1 && first !== undefined && Object.values(shares)[0] === 'always')
      return { always: first[0] };
    const others = bad.filter((id) => !Object.hasOwn(shares, id));
    const left = Math.max(0, 100 - percents.reduce((all, [, share]) => all + share, 0));
    const each = others.length === 0 ? 0 : left / others.length;
    return Object.fromEntries(
      [...percents, ...others.map((id): [string, number] => [id, each])].filter(
        ([, share]) => share > 0,
      ),
    );
  };
  return Object.fromEntries(
    causes.map(({ id }) => {
      const shares = marked[id];
      return [id, shares === undefined ? any : row(shares as Shares)];
    }),
  );
}
