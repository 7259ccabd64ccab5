import { good, type Parsed } from '../../problem.ts';
import { oftenWords, type Shares } from '../written/written.ts';
import { notUnderstood } from './question.ts';

type Often = keyof typeof oftenWords;

/** What stands in a cell whose value hangs on the vehicle: it stays as the file has it. */
export const varies = '(by vehicle)';

/** A chance, odds or minutes as a cell: `dead 98; low 1`, `certainly dead`, `5`. */
export function showCell(value: unknown): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return varies;
  if ('always' in value) return `certainly ${String(value.always)}`;
  return Object.entries(value)
    .map(([result, share]) => `${result} ${String(share)}`)
    .join('; ');
}

/** A number as spreadsheets write it, with a point or a comma. */
export function readAmount(text: string): number | undefined {
  const plain = text.trim().replace(/%$/, '').replace(',', '.');
  return /^\d*\.?\d+(e-?\d+)?$/i.test(plain) ? Number(plain) : undefined;
}

/** Reads the chances of a cell against the results that the check has. */
export function readCell(text: string, results: readonly string[]): Parsed<unknown> {
  const certain = /^certainly\s+(\S+)$/.exec(text)?.[1];
  if (certain !== undefined)
    return results.includes(certain) ? good({ always: certain }) : noResult(certain, results);
  const shares: Record<string, number | Often> = {};
  for (const part of text.split(/\s*;\s*/).filter((one) => one !== '')) {
    const [, result = '', amount = ''] = /^(\S+)\s+(\S+)$/.exec(part) ?? [];
    const share = shareOf(amount);
    if (result === '' || share === undefined)
      return notUnderstood(
        `"${part}" is not a result with a percent or a word behind it.`,
        example,
      );
    if (!results.includes(result)) return noResult(result, results);
    if (shares[result] !== undefined)
      return notUnderstood(`"${result}" stands there twice.`, example);
    shares[result] = share;
  }
  return good(shares satisfies Shares);
}

const example = `Write dead 98; low 1, or dead mostly (${Object.keys(oftenWords).join(', ')}).`;

const noResult = (id: string, results: readonly string[]) =>
  notUnderstood(`"${id}" is no result of this check.`, `They are: ${results.join(', ')}.`);

function shareOf(word: string): number | Often | undefined {
  const small = word.toLowerCase();
  if (Object.hasOwn(oftenWords, small)) return small as Often;
  const percent = readAmount(small);
  return percent !== undefined && percent <= 100 ? percent : undefined;
}
