import { parseReading } from '../../trade/units/reading.ts';
import { convert } from '../../trade/units/units.ts';
import { bad, good, type Parsed } from '../../problem.ts';
import type { ActionOf } from '../action.ts';
import { outOfOrder } from './apart.ts';
import { accept, refuse, refuseUnknown, type Ruling } from './ruling.ts';
import type { Amount, Conditions } from '../kinds/shapes.ts';
import { currentLeg, type Story } from '../story.ts';

/** Where and when the readings are taken; each with the limits of where people mend vehicles. */
const asked = {
  altitude: { quantity: 'length', unit: 'ft', within: 'm', low: -430, high: 9000 },
  temperature: { quantity: 'temperature', unit: 'F', within: 'C', low: -60, high: 60 },
} as const;

/** Reads altitude (feet unless said) and air temperature (Fahrenheit unless said) as typed. */
export function parseConditions(
  typed: { readonly altitude?: string | undefined; readonly temperature?: string | undefined },
  units: 'us' | 'metric' = 'us',
): Parsed<Conditions> {
  const conditions: Record<string, Amount> = {};
  for (const name of ['altitude', 'temperature'] as const) {
    const text = typed[name];
    if (text === undefined || text.trim() === '') continue;
    const parsed = parseCondition(name, text, units);
    if (parsed.kind === 'bad') return parsed;
    conditions[name] = parsed.value;
  }
  return good(conditions);
}

function parseCondition(
  name: keyof typeof asked,
  text: string,
  units: 'us' | 'metric',
): Parsed<Amount> {
  const { quantity, unit, within, low, high } = asked[name];
  const parsed = parseReading(text, { quantity, unit: units === 'us' ? unit : within });
  if (parsed.kind === 'bad') return parsed;
  const value = convert(parsed.value.value, parsed.value.unit, within);
  if (value >= low && value <= high) return good({ ...parsed.value, typed: text });
  return bad({
    code: 'condition-out-of-range',
    message: `The ${name} ${text} lies outside ${low} to ${high} ${within}.`,
    mend: `Give it with its unit, such as ${name === 'altitude' ? '5200ft or 1600m' : '70F or 21C'}.`,
    value: text,
  });
}

export function conditions(action: ActionOf<'conditions'>, story: Story): Ruling {
  const parsed = parseConditions(action, story.header.units);
  const { notKnown = [] } = action;
  if (parsed.kind === 'good' && notKnown.length + Object.keys(parsed.value).length === 0)
    return refuse('no-conditions', 'No condition is said.', 'Give altitude or temperature.');
  if (parsed.kind === 'good')
    return accept([
      { kind: 'conditions', set: parsed.value, ...(notKnown.length > 0 && { notKnown }) },
    ]);
  const [problem] = parsed.problems;
  return problem === undefined
    ? refuse('no-number', 'That is no reading.', 'Type a number with its unit.')
    : { kind: 'refused', problem };
}

export function standing({ do: _, despite: __, ...set }: ActionOf<'standing'>): Ruling {
  return Object.keys(set).length === 0
    ? refuse(
        'no-standing',
        'Nothing is said of battery, key, engine or heat.',
        'Give at least one.',
      )
    : accept([{ kind: 'standing', set }]);
}

/** Opens or closes an access; each is opened once and stays open until it is closed. */
export function access({ open, close }: ActionOf<'access'>, story: Story): Ruling {
  const { shop } = currentLeg(story);
  const id = open ?? close;
  if (id === undefined || (open !== undefined && close !== undefined))
    return refuse('no-access', 'Say one access to open or to close.', 'Give "open" or "close".');
  if (!Object.hasOwn(shop.accesses, id) && !story.open.includes(id))
    return refuseUnknown('access', id, Object.keys(shop.accesses));
  if (open !== undefined && story.open.includes(id))
    return refuse('already-open', `"${id}" is open already.`, 'Go on with the check.', id);
  if (close !== undefined && !story.open.includes(id))
    return refuse('not-open', `"${id}" is not open.`, 'Nothing needs to be closed.', id);
  if (open !== undefined) return accept([{ kind: 'access', access: id, now: 'open' }]);
  return accept(
    [{ kind: 'access', access: id, now: 'closed' }],
    outOfOrder(story, (thing) => thing.kind === 'access' && thing.access === id),
  );
}
