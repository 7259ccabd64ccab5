import { readPart, saysNone } from '../session/costs/parts.ts';
import { checkIn, type Finding, type Leg, type Repaired, type Story } from '../session/story.ts';
import { isLook, lookAt, notThis } from '../tree/looked.ts';
import { unlisted, type Check } from '../tree/model.ts';
import { isOwn, ownResults } from '../tree/own/bare.ts';
import { fittingCautions } from '../tree/own/fitting-cautions.ts';

/** What a mentor has to fill in: `trees check` names each of these places. */
const toFill = null;

const source = 'from the record of one job, no other source';

/** The checks that were made, in the order in which each was made first, with all that each showed. */
type Made = { readonly id: string; readonly check: Check; readonly findings: readonly Finding[] };

type Whole = { readonly story: Story; readonly leg: Leg; readonly index: number };

/**
 * The last complaint of a job that had no tree, as the file of a tree in format 2 for a mentor to
 * finish: what was done is in it, in the order of doing, and every number that nobody gave is left
 * to fill. Undefined where every complaint of the job had a tree.
 */
export function treeOf(story: Story): object | undefined {
  const index = story.legs.findLastIndex(({ tree }) => isOwn(tree));
  const leg = story.legs[index];
  if (leg === undefined) return undefined;
  const whole = { story, leg, index };
  const { tree } = leg;
  const made = checksMade(whole);
  const [test, ...rest] = made;
  return {
    $schema: './tree.schema.json',
    format: 2,
    id: tree.id.replace(/^own-/, ''),
    title: tree.title,
    complaint: { say: tree.complaint.say, confirm: tree.complaint.confirm },
    start: rest[0]?.id ?? tree.complaint.confirm,
    unlisted: toFill,
    causes: Object.fromEntries(
      Object.keys(tree.causes).map((cause) => [cause, causeOf(whole, cause)]),
    ),
    checks: Object.fromEntries(
      [...(test === undefined ? [] : [test]), ...rest].map((one, place) => [
        one.id,
        checkOf(whole, one, made[place + 1]?.id),
      ]),
    ),
  };
}

/** The complaint's own test first, whether it was made or not; open looks under an id that a file may have. */
function checksMade({ story, leg, index }: Whole): readonly Made[] {
  const { confirm } = leg.tree.complaint;
  const findings = story.findings.filter((finding) => finding.leg === index);
  const ids = [...new Set([confirm, ...findings.map(({ check }) => check)])];
  return ids.flatMap((id) => {
    const check = checkIn(story, id, index);
    return check === undefined
      ? []
      : [{ id: fileId(story, id), check, findings: findings.filter((one) => one.check === id) }];
  });
}

/**
 * The id of a check in the file: the one of an open look is the program's own, and one taken from a
 * tree of the library is another there, since what it leads to and what it says of causes is not the same.
 */
function fileId({ named }: Pick<Story, 'named'>, id: string): string {
  const isTaken = named.some((one) => one.id === id && one.from !== undefined);
  return isTaken ? `${id}-here` : id.replace(/^open-(?=look-at-)/, '');
}

/** The cause that the way condemns at a check: the one named next after what that showed. */
function condemnedAfter({ story }: Whole, { findings }: Made): string | undefined {
  const bad = findings.find(({ result, proof }) => result !== ownResults.good && !proof);
  const next = story.findings.find(({ n }) => n > (bad?.n ?? Infinity))?.n ?? Infinity;
  return story.condemned.find(({ n }) => bad !== undefined && n > bad.n && n < next)?.cause;
}

function checkOf(whole: Whole, made: Made, next: string | undefined): object {
  const { leg, story } = whole;
  const { id, check } = made;
  const isTest = id === leg.tree.complaint.confirm;
  const look = Object.keys(leg.tree.causes).find((cause) => fileId(story, lookAt(cause)) === id);
  const condemned = look ?? condemnedAfter(whole, made);
  const results = resultsOf(made, { isTest, next, condemned });
  const how = check.how.length > 1 ? check.how : [`${check.ask}.`, healthyStep(check)];
  const rows = look === undefined ? Object.keys(leg.tree.causes) : [look];
  const bad = results.slice(1).map((result) => result.id);
  return {
    kind: check.kind,
    ask: check.ask,
    ...(check.told !== undefined && { told: asThing(check.told) }),
    how,
    ...(check.healthy !== undefined && { healthy: check.healthy }),
    minutes: check.minutes > 0 ? check.minutes : minutesOf(story, made),
    ...given('access', check.access),
    ...(Object.keys(check.standing).length > 0 && { standing: check.standing }),
    ...given('cautions', cautionsOf(whole, check, [...how, ...results.map(({ label }) => label)])),
    ...given('tools', check.tools),
    ...readingOf(check),
    ...(condemned !== undefined && { 'looks-at': [condemned] }),
    results,
    ...(isTest ? {} : { sound: toFill }),
    'shows-with': Object.fromEntries(
      [...rows, ...(isTest ? [unlisted] : [])].map((cause) => [
        cause,
        Object.fromEntries(bad.map((result) => [result, toFill])),
      ]),
    ),
    source,
  };
}

const readingOf = ({ reading, readings, judge }: Check): object => ({
  ...(reading !== undefined && { reading }),
  ...(readings !== undefined && { readings }),
  ...(judge !== undefined && { judge }),
});

/** What its words call for as they stand in the file; one of the library has its own. */
const cautionsOf = ({ leg }: Whole, { ask, cautions }: Check, words: readonly string[]) =>
  cautions.length > 0 ? cautions : fittingCautions([ask, ...words], leg.shop);

const healthyStep = ({ healthy, results }: Check): string =>
  `Healthy is: ${healthy ?? results[0]?.label ?? 'as it should be'}.`;

/** A tree tells its checks as the names of things. */
const asThing = (told: string): string => (/^(the|a|an)\b/i.test(told) ? told : `the ${told}`);

const given = (key: string, list: readonly string[]): object =>
  list.length === 0 ? {} : { [key]: list };

type Leading = {
  readonly isTest: boolean;
  readonly next: string | undefined;
  readonly condemned: string | undefined;
};

/** The results, healthiest first, in the words in which each was found; what was neither only where it was. */
function resultsOf({ check, findings }: Made, { isTest, next, condemned }: Leading) {
  const onward = next === undefined ? ends('Nothing else was looked at in this job.') : { next };
  const found = (id: string): Finding | undefined =>
    findings.find(({ result, proof }) => result === id && !proof);
  return check.results
    .filter(({ id }) => id !== ownResults.neither || found(id) !== undefined)
    .map(({ next: _next, reason: _reason, leads: _leads, told: _told, ...result }, index) => {
      const label = found(result.id)?.words ?? result.label;
      if (index === 0)
        return { ...result, label, ...(isTest ? ends('It does not show now.') : onward) };
      return {
        ...result,
        label,
        ...(condemned === undefined ? onward : { next: `cause:${condemned}` }),
      };
    });
}

const ends = (reason: string) => ({ next: 'stop', reason });

/** Minutes from what was written before a check was answered first to its answer, by the machine's uptime. */
function minutesOf({ entries }: Story, { findings }: Made): number | null {
  const place = entries.findIndex(({ event }) => event.n === findings[0]?.n);
  const [before, at] = [entries[place - 1]?.event.up, entries[place]?.event.up];
  return before === undefined || at === undefined
    ? toFill
    : Math.max(1, Math.round((at - before) / 60));
}

function causeOf({ story, leg }: Whole, id: string): object {
  const cause = leg.tree.causes[id];
  const repair = story.repairs.findLast((one) => one.cause === id);
  const found = story.condemned.findLast((one) => one.cause === id)?.found;
  const steps = [repair?.did ?? `Put right: ${cause?.name ?? id}`];
  return {
    name: cause?.name,
    where: cause?.where,
    odds: toFill,
    shows: found ?? cause?.name,
    repair: {
      do: steps,
      minutes: repair?.minutes ?? toFill,
      ...given('cautions', fittingCautions(steps, leg.shop)),
      ...given('parts', partsOf(repair)),
      ...given('then', mendedBy(story, id)),
    },
  };
}

const partsOf = (repair: Repaired | undefined): readonly string[] =>
  repair === undefined || saysNone(repair.parts)
    ? []
    : repair.parts.map((part) => readPart(part).name);

/** The checks that had shown something bad before a repair and were made again after it. */
function mendedBy(story: Story, cause: string): readonly string[] {
  const { findings, repairs } = story;
  const repair = repairs.findLast((one) => one.cause === cause);
  if (repair === undefined) return [];
  const again = findings.filter(({ n, check, proof }) => n > repair.n && !proof && !isLook(check));
  const bad = new Set(
    findings
      .filter(({ n, result }) => n < repair.n && result !== ownResults.good && result !== notThis)
      .map(({ check }) => check),
  );
  return [...new Set(again.map(({ check }) => check))]
    .filter((check) => bad.has(check))
    .map((check) => fileId(story, check));
}
