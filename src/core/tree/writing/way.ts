import { good, type Parsed } from '../../problem.ts';
import type { Draft, Lead, Way } from './draft.ts';
import { offeredWay } from './offered-way.ts';
import { ask, notUnderstood, type Asking } from './question.ts';

type Change = { readonly check: string; readonly result: string; readonly lead: Lead };

const letters = 'abcdefghi';

/** Shows where each result leads, and takes changes until nobody wants another. */
export function* askWay(draft: Draft): Asking<Way> {
  let way = offeredWay(draft);
  for (;;) {
    const change = yield* ask({
      text: 'So the way would lead. Is it good, or what leads elsewhere?',
      list: wayLines(draft, way),
      may: 'A check with the letter of its result, and where it leads: "check 3", "cause 2", or "stop" with the reason.',
      example: '1b cause 2',
      offered: 'as it stands',
      read: (line) => readChange(line, draft),
    });
    if (change === undefined) return way;
    way = { ...way, [change.check]: { ...way[change.check], [change.result]: change.lead } };
  }
}

/** A line for each check: `2 Volts at the horn: a full -> cause 1; b low -> check 3`. */
function wayLines({ checks, causes }: Draft, way: Way): readonly string[] {
  const words = (lead: Lead | undefined): string => {
    if (lead === undefined) return 'nowhere yet';
    if (lead.to === 'stop') return 'stop';
    const list = lead.to === 'check' ? checks : causes;
    const number = list.findIndex(({ id }) => id === lead.id) + 1;
    return lead.to === 'check' ? `check ${number}` : `cause ${number}`;
  };
  return checks.map(
    ({ id, ask: question, results }, index) =>
      `${index + 1} ${question} ${results
        .map(
          ({ id: result, label }, place) =>
            `${letters[place] ?? ''} ${label} -> ${words(way[id]?.[result])}`,
        )
        .join('; ')}`,
  );
}

function readChange(line: string, draft: Draft): Parsed<Change | undefined> {
  if (/^(as it stands|good|yes|ok)$/i.test(line)) return good(undefined);
  const [, number = '', letter = '', rest = ''] =
    /^(\d+)\s*([a-i])\b\s*(?:->)?\s*(.*)$/i.exec(line) ?? [];
  const place = Number(number) - 1;
  const check = draft.checks[place];
  const result = check?.results[letters.indexOf(letter.toLowerCase())];
  if (letter === '' || check === undefined || result === undefined)
    return notUnderstood(
      `"${line}" begins with no check and result of these.`,
      'Write 1b cause 2.',
    );
  const lead = readLead(rest, draft, place);
  return lead.kind === 'bad'
    ? lead
    : good({ check: check.id, result: result.id, lead: lead.value });
}

function readLead(rest: string, draft: Draft, from: number): Parsed<Lead> {
  const reason = /^stop\b[\s:]*(.*)$/i.exec(rest)?.[1];
  if (reason === undefined) return readPlace(rest, draft, from);
  return reason === ''
    ? notUnderstood(
        'Why does the way stop there?',
        'Write it behind: 1b stop Send it to a radiator shop.',
      )
    : good({ to: 'stop', reason });
}

function readPlace(rest: string, { checks, causes }: Draft, from: number): Parsed<Lead> {
  const [, what = '', number = ''] = /^(check|cause)\s*(\d+)$/i.exec(rest) ?? [];
  const to = what.toLowerCase() === 'check' ? 'check' : 'cause';
  const ids = (to === 'check' ? checks : causes).map(({ id }) => id);
  const id = ids[Number(number) - 1];
  if (what === '' || id === undefined)
    return notUnderstood(`"${rest}" is neither a check, a cause nor a stop.`, 'Write 1b cause 2.');
  if (to === 'check' && Number(number) - 1 <= from)
    return notUnderstood(
      'The way would come round to where it was: nothing was changed, so it would show the same.',
      'Lead to a later check.',
    );
  return good({ to, id });
}
