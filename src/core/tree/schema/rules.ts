import { longest } from '../lint/texts.ts';
import { refer, type Node } from './names.ts';

/** Longest times that are no slip of the finger: a check of a day, a repair of a week. */
const mostMinutes = { check: 480, repair: 2400 };

const some = (...keys: readonly string[]): Node => ({
  anyOf: keys.map((key) => ({ required: [key] })),
});

/** Where the way leaves this tree, a reason is told. */
const reasonRule: Node = {
  if: {
    properties: { next: { type: 'string', pattern: '^(?:stop$|tree:)' } },
    required: ['next'],
  },
  // oxlint-disable-next-line unicorn/no-thenable -- a word of JSON Schema, never awaited
  then: { required: ['reason'] },
};

/** Bands need something that is measured. */
const bandRule: Node = {
  if: { not: { required: ['reading'] } },
  // oxlint-disable-next-line unicorn/no-thenable -- as above
  then: { properties: { results: { items: { not: some('from', 'below') } } } },
};

/** What `trees check` asks for beyond the shape, as far as a schema can say it: by owner of the key. */
export const objectRules: Readonly<Record<string, Node>> = {
  checks: {
    ...bandRule,
    dependentRequired: {
      reading: ['healthy'],
      limits: ['reading'],
      bands: ['limits'],
      readings: ['reading', 'judge'],
    },
  },
  results: reasonRule,
  reading: { allOf: [refer('units')] },
  readings: { allOf: [refer('units')] },
};

/** Keys that the model can do without, and `trees check` cannot. */
export const neededKeys: Readonly<Record<string, readonly string[]>> = {
  causes: ['where', 'shows'],
  checks: ['how', 'source'],
  results: ['next'],
};

/** The same of single keys, laid over what the model says. */
export const keyRules: Readonly<Record<string, Node>> = {
  'checks.ask': { maxLength: longest.ask },
  'results.label': { maxLength: longest.label },
  'checks.limits': { examples: [[11.5, 2]] },
  'checks.sound': { examples: [3, { low: 5, dead: 2 }] },
  'checks.shows-with': { examples: [{ fuse: { dead: 98 }, horn: { low: 'mostly' } }] },
  'checks.after': { examples: [{ 'fuse-look': ['whole'] }] },
  'tree.baseline': { examples: [['battery-at-rest']] },
};

/** Keys whose value is, or is a list of, something that stands once among the definitions. */
export const listKeys: Readonly<Record<string, string>> = {
  cautions: 'caution',
  tools: 'tool',
  access: 'access',
};

/** Greatest values that are no slip of the finger. */
export const mostOf: Readonly<Record<string, number>> = {
  'checks.minutes': mostMinutes.check,
  'stations.minutes': mostMinutes.check,
  'states.minutes': mostMinutes.check,
  'repair.minutes': mostMinutes.repair,
};

const check = {
  kind: 'look',
  ask: '${1:The question on the screen}',
  how: ['${2:A short step}'],
  healthy: '${3:What a good vehicle shows}',
  minutes: 2,
  results: [
    { id: 'good', label: '${4:healthy first}', next: '${5:next-check}' },
    { id: 'bad', label: '${6:the telling one last}', next: 'cause:${7:id}' },
  ],
  sound: 3,
  'shows-with': { '${7:id}': { bad: 'mostly' } },
  source: 'common practice, no source',
};

const measure = {
  ...check,
  kind: 'measure',
  tools: ['dvm'],
  standing: { battery: 'connected', key: 'run', engine: 'off' },
  reading: { quantity: 'voltage', unit: 'V', plausible: [0, 16] },
  limits: [11.5],
};

const cause = {
  name: '${1:What is wrong}',
  where: '${2:Where it sits}',
  odds: 10,
  shows: '${3:How it shows itself}',
  repair: { do: ['${4:A short step}'], minutes: 20, part: 'small' },
};

/** What an editor offers to put in, by the map that it goes into. */
export const snippets: Readonly<Record<string, readonly Node[]>> = {
  checks: [
    { label: 'a look', body: check },
    { label: 'a reading', body: measure },
  ],
  causes: [{ label: 'a cause', body: cause }],
  results: [
    { label: 'leads to a check', body: { id: '${1:id}', label: '${2:label}', next: '${3:check}' } },
    {
      label: 'ends the way',
      body: { id: '${1:id}', label: '${2:label}', next: 'stop', reason: '${3:why}' },
    },
  ],
};
