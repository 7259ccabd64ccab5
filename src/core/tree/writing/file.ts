import type { Draft, DraftCause, DraftCheck, Lead, Way } from './draft.ts';

const source = 'common practice, no source';

/** Readings further off than these are slips of the finger: wide, as a fault may show anything. */
export function plausible(quantity: string, limits: readonly number[]): readonly [number, number] {
  const highest = Math.max(...limits.map(Math.abs));
  const lowest = Math.min(0, ...limits) * 10;
  if (quantity === 'voltage') return [lowest, Math.max(16, 2 * highest)];
  if (quantity === 'temperature') return [-40, Math.max(200, 2 * highest)];
  return [lowest, highest * (quantity === 'resistance' ? 1000 : 10)];
}

/** The draft as the file of a tree in format 2. */
export function fileOfDraft(draft: Draft, id: string): object {
  const { title = '', say = '', test, causes, checks, unlisted, way } = draft;
  const all = [...(test === undefined ? [] : [test]), ...checks];
  return {
    $schema: './tree.schema.json',
    format: 2,
    id,
    title,
    complaint: { say, confirm: test?.id ?? '' },
    start: checks[0]?.id ?? '',
    unlisted,
    causes: Object.fromEntries(causes.map((cause) => [cause.id, causeOf(cause)])),
    checks: Object.fromEntries(all.map((check) => [check.id, checkOf(check, way)])),
  };
}

const some = <T>(key: string, values: readonly T[] | undefined): object =>
  values === undefined || values.length === 0 ? {} : { [key]: values };

function causeOf({ name, where, odds, shows, steps, work, cautions }: DraftCause): object {
  return {
    name,
    where,
    odds,
    shows,
    repair: {
      do: steps,
      minutes: work?.minutes,
      standing: work?.standing,
      ...some('cautions', cautions),
      ...some('tools', work?.tools),
      ...some('parts', work?.parts),
    },
  };
}

function checkOf(check: DraftCheck, way: Way): object {
  const { id, ask, how, results, reading, work, cautions, rows, sound } = check;
  return {
    kind: work.kind,
    ask,
    how,
    minutes: work.minutes,
    standing: work.standing,
    ...some('cautions', cautions),
    ...some('tools', work.tools),
    ...(reading !== undefined && {
      reading: {
        quantity: reading.quantity,
        unit: reading.unit,
        plausible: plausible(reading.quantity, reading.limits),
      },
      limits: reading.limits,
      ...some('bands', reading.bands),
    }),
    results: results.map((result) => ({ ...result, ...leadOf(way[id]?.[result.id]) })),
    ...(sound !== undefined && { sound }),
    'shows-with': rows,
    source,
  };
}

function leadOf(lead: Lead | undefined): object {
  if (lead === undefined) return {};
  if (lead.to === 'stop') return { next: 'stop', reason: lead.reason };
  return { next: lead.to === 'cause' ? `cause:${lead.id}` : lead.id };
}
