import { curedBy } from '../core/reason/history/cured.ts';
import { failedProof, lastRepair } from '../core/session/proof.ts';
import { readWords, resultWords } from '../core/session/finding-words.ts';
import type { Preparation } from '../core/session/preparation.ts';
import type { Finding, Leg, Story } from '../core/session/story.ts';
import { showReading } from '../core/trade/units/units.ts';
import type { Check, Standing } from '../core/tree/model.ts';
import type { Needed } from '../core/tree/states.ts';
import type { Shop } from '../core/tree/shop.ts';
import { count } from '../core/text.ts';

const standings: Readonly<Record<keyof Standing, Readonly<Record<string, string>>>> = {
  battery: {
    connected: 'Battery connected, ground lead last',
    disconnected: 'Battery off: ground lead first',
    'meter-in-series': 'Meter in series in the ground lead',
  },
  key: { off: 'Key off', acc: 'Key to ACC', run: 'Key to RUN', start: 'Key to START' },
  engine: {
    off: 'Engine off',
    cranking: 'Engine cranking',
    idling: 'Engine idling',
    'fast-idle': 'Engine at fast idle',
    revved: 'Engine at 2000-2500 rpm',
    road: 'On the road',
  },
  heat: {
    cold: 'Engine cold (stood 4 hours)',
    warm: 'Engine warm',
    hot: 'Engine hot (15 minutes run)',
    'hot-soaked': 'Engine hot-soaked (stopped 10 to 40 minutes)',
  },
};

/** A standing in words, one phrase a part: `Key off`. */
export function standingWords(standing: Standing): readonly string[] {
  const words: Readonly<Record<string, Readonly<Record<string, string>>>> = standings;
  return Object.entries(standing).flatMap(([part, value]) =>
    value === undefined ? [] : [words[part]?.[value] ?? value],
  );
}

/** All that is to be set before a step, in order: `First: 1. Key to RUN. 2. Engine idling.` */
export function setUpWords(preparations: readonly Preparation[], shop: Shop): string {
  const words = preparations.map((one) => preparationWords(one, shop));
  const [only = '', ...rest] = words;
  return rest.length === 0
    ? `First: ${only}. y when it is so.`
    : `First: ${words.map((one, index) => `${index + 1}. ${one}.`).join(' ')} y when all is so.`;
}

/** What is to be done before a step. */
export function preparationWords(preparation: Preparation, shop: Shop): string {
  if (preparation.kind === 'standing') return standingWords(preparation.set).join('; ');
  const access = shop.accesses[preparation.access];
  const { kind } = preparation;
  const does = kind === 'open' ? 'Open' : 'Put back';
  return access === undefined
    ? `${does}: ${preparation.access}`
    : `${does}: ${access.name} (${count(access[kind], 'minute')})`;
}

/** What a step needs that an earlier one has spent, and what it costs to bring back. */
export const stateWords = ({ say, minutes }: Needed): string =>
  `this tells something only while ${say}, and that was spent: bring it back (about ${count(minutes, 'minute')})`;

/** What counts as healthy in a check: the tree's own words, or its healthiest result. */
export const healthyWords = (check: Check): string =>
  check.healthy ?? check.results[0]?.label ?? '';

/** The conditions a person is asked for. */
export const conditionNames = {
  altitude: 'height above sea level here',
  temperature: 'air temperature',
} as const;

/** `as 17.9 at sea level`; nothing when the reading stands as it is. */
export const standardWords = (standard: Finding['standard']): string =>
  standard === undefined
    ? ''
    : `as ${showReading(standard.value, standard.unit).split(' ')[0] ?? ''} ${standard.under}`;

/** A finding in one line: `12.6 V: within 0.2 V of the battery`. */
export function findingWords(finding: Finding, leg: Leg): string {
  const check = leg.tree.checks[finding.check];
  const judged = [readWords(check, finding), standardWords(finding.standard)];
  const read = judged.filter((part) => part !== '').join(', ');
  return [read, resultWords(check, finding)].filter((part) => part !== '').join(': ');
}

/** That the last repair failed its proof, until something is answered after it; else empty. */
export function failedProofWords(story: Story): string {
  if (failedProof(story) === undefined) return '';
  const repair = lastRepair(story);
  const real = repair !== undefined && curedBy(story, repair).length > 0;
  return `The proof failed: the complaint is still there.${real ? ' What was mended was a real fault, and not the only one.' : ''}`;
}

/** The last finding with the check it belongs to. */
export function lastWords(story: Story): string {
  const last = story.findings.at(-1);
  const leg = last && story.legs[last.leg];
  if (last === undefined || leg === undefined) return 'nothing found yet';
  const ask = (leg.tree.checks[last.check]?.ask ?? last.check).replace(/[?.:]$/, '');
  return `${ask}: ${findingWords(last, leg)}`;
}

/** The name of a file without its folder: a long path would be cut before it. */
export const withoutFolder = (path: string): string => path.replace(/^.*[\\/]/, '');
