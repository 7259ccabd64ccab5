import type { Tell } from '../../problem.ts';
import { unlisted } from '../model.ts';
import { unknown, unknownAmong } from '../unknown.ts';
import { limitOf } from '../limits.ts';
import type { Limits } from './bands.ts';
import { withBranches } from './branches.ts';
import { checkBranches } from './check-branches.ts';
import { checkLeads } from './check-leads.ts';
import { checkVaried } from './check-varied.ts';
import { isCertain } from './chances.ts';
import { alternativesOf } from './varying.ts';
import type { Certain, Shares, Written, WrittenCheck } from './written.ts';

type Place = { readonly path: string; readonly check: WrittenCheck; readonly tell: Tell };

/** What is wrong with the chances, limits and leads that a file of format 2 gives by name. */
export function checkWritten(file: Written, tell: Tell): void {
  const written = { ...file, checks: withBranches(file) };
  checkBranches(file, tell);
  for (const [id, check] of Object.entries(written.checks)) {
    const place = { path: `checks.${id}`, check, tell };
    checkResults(place);
    checkRows(written, id, place);
    checkLimits(place);
    checkLeads(written, place);
  }
  for (const [id, { because = [] }] of Object.entries(written.causes))
    for (const [index, cause] of because.entries())
      if (cause === id || !Object.hasOwn(written.causes, cause))
        tell(unknown('cause', cause, `causes.${id}.because[${index}]`, written.causes));
  checkVaried(written, tell);
}

function checkResults({ path, check, tell }: Place): void {
  for (const [index, { id, label }] of check.results.entries()) {
    if (label === undefined && check.limits === undefined)
      tell({
        code: 'no-label',
        path: `${path}.results[${index}]`,
        value: id,
        message: `The result "${id}" has no label, and no limits that would make one.`,
        mend: 'Give "label": what the mechanic sees, in a few words.',
      });
  }
}

function checkRows({ causes, complaint }: Written, id: string, place: Place): void {
  const isComplaint = id === complaint.confirm;
  checkSound(place, isComplaint);
  for (const [cause, varied] of Object.entries(place.check['shows-with'] ?? {})) {
    const at = `${place.path}.shows-with.${cause}`;
    if (cause !== unlisted && !Object.hasOwn(causes, cause))
      place.tell(unknown('cause', cause, at, causes));
    if (Object.hasOwn(place.check.points, cause)) place.tell(twice(at, 'shows-with', 'points'));
    for (const { is } of alternativesOf<Certain | Shares>(varied))
      if (isCertain(is)) checkCertain(is, at, place, isComplaint);
      else checkShares(is, at, place);
  }
}

function checkSound(place: Place, isComplaint: boolean): void {
  const { path, check, tell } = place;
  const { sound, background } = check;
  if (sound === undefined) return;
  if (background !== undefined) tell(twice(`${path}.background`, 'sound', 'background'));
  if (isComplaint)
    tell({
      code: 'sound-on-complaint',
      path: `${path}.sound`,
      message: "The complaint's own test has no sound vehicles: nobody brings one.",
      mend: 'Leave "sound" out here; give each cause a row in "shows-with".',
    });
  for (const { is } of alternativesOf<Shares | number>(sound))
    if (typeof is !== 'number') checkShares(is, `${path}.sound`, place);
}

const twice = (path: string, one: string, other: string) => ({
  code: 'said-twice',
  path,
  message: `The same is said by "${one}" and by "${other}".`,
  mend: `Keep "${one}", which goes by name.`,
});

function checkCertain({ always }: Certain, path: string, place: Place, isComplaint: boolean): void {
  const ids = place.check.results.map(({ id }) => id);
  if (!ids.includes(always)) place.tell(unknownAmong('result', always, path, ids));
  if (!isComplaint)
    place.tell({
      code: 'certain-elsewhere',
      path,
      value: always,
      message:
        "A result can be certain in the complaint's own test only: any other check can miss.",
      mend: `Write {"${always}": "always"}, which is 97 of a hundred.`,
    });
}

function checkShares(shares: Shares, path: string, { check, tell }: Place): void {
  const ids = check.results.map(({ id }) => id);
  let total = 0;
  for (const [result, share] of Object.entries(shares)) {
    if (!ids.includes(result)) tell(unknownAmong('result', result, path, ids));
    if (typeof share === 'number') total += share;
  }
  if (total > 100.000001)
    tell({
      code: 'over-a-hundred',
      path,
      value: JSON.stringify(shares),
      message: `Of a hundred vehicles ${Number(total.toPrecision(6))} are shared out.`,
      mend: 'Say of a hundred how many show each result; what is left shows the healthy one.',
    });
}

function checkLimits({ path, check, tell }: Place): void {
  const { limits, bands, reading, results } = check;
  const ids = results.map(({ id }) => id);
  if (bands !== undefined && ids.toSorted().join() !== bands.toSorted().join())
    tell({
      code: 'bands-other',
      path: `${path}.bands`,
      value: bands.join(', '),
      message: 'The bands do not name each result of this check once.',
      mend: `Name these, from the lowest reading up: ${ids.join(', ')}.`,
    });
  if (limits === undefined) return;
  if (reading === undefined)
    tell({
      code: 'band-without-reading',
      path: `${path}.limits`,
      message: 'There are limits, but the check takes no reading.',
      mend: 'Add "reading" with its quantity, unit and plausible range, or take the limits out.',
    });
  if (results.some(({ from, below }) => from !== undefined || below !== undefined))
    tell(twice(`${path}.results`, 'limits', 'from and below'));
  for (const { is } of alternativesOf<Limits>(limits)) checkRun(is, ids, `${path}.limits`, tell);
}

/** One limit fewer than results, and all of them falling or all rising. */
function checkRun(limits: Limits, ids: readonly string[], path: string, tell: Tell): void {
  const values = limits.map(limitOf);
  if (limits.length !== ids.length - 1)
    tell({
      code: 'limits-count',
      path,
      value: JSON.stringify(values),
      message: `${ids.length} results (${ids.join(', ')}) meet at ${ids.length - 1} limits; there are ${limits.length}.`,
      mend: 'Give one number for each place where two results meet, in their order.',
    });
  const steps = values.slice(1).map((value, index) => Math.sign(value - (values[index] ?? 0)));
  if (steps.some((step) => step === 0 || step !== steps[0]))
    tell({
      code: 'limits-order',
      path,
      value: JSON.stringify(values),
      message: 'The limits go up and down.',
      mend: 'Let them all fall or all rise; "bands" names the results from the lowest reading up.',
    });
}
