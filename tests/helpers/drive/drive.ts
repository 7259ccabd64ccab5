import { opened } from './opened.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { ledStory, mayLead } from '../../../src/app/leading-step.ts';
import { checkMinutes } from '../../../src/core/reason/history/from-story.ts';
import { placeOf, workMinutes } from '../../../src/core/reason/advice/minutes.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { contradictionOf, type Contradiction } from '../../../src/core/session/contradiction.ts';
import type { Event } from '../../../src/core/session/event.ts';
import type { Header } from '../../../src/core/session/header/header.ts';
import { newHeader } from '../../../src/core/session/header/new-header.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import type { World } from '../../../src/core/session/rules/ruling.ts';
import { parseConditions } from '../../../src/core/session/rules/vehicle.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { defaultSettings, type Settings } from '../../../src/core/settings.ts';
import { trusted } from '../../../src/core/problem.ts';
import type { Check, Tree } from '../../../src/core/tree/model.ts';
import type { Shop } from '../../../src/core/tree/shop.ts';
import { neededBy } from '../../../src/core/tree/states.ts';
import { stampAt } from '../story.ts';
import type { Drive, Step } from './shape.ts';
import { metered } from './meter.ts';
import { shownBy, type Vehicle } from './script.ts';

/** Who leads: the tree's own way, or the step that the advice puts first. */
export type Lead = Settings['lead'];

/** What a vehicle is driven with: its tree, and the library that it may lead on into. */
type Books = { readonly tree: Tree; readonly shop: Shop; readonly library?: readonly Tree[] };

type Walk = {
  readonly header: Header;
  readonly world: World;
  readonly events: readonly Event[];
  readonly led: ReturnType<typeof ledStory>;
  readonly lead: Lead;
  readonly steps: readonly Step[];
  readonly settled: readonly string[];
  readonly troubles: readonly string[];
};

const mostSteps = 60;

/** Drives a vehicle to the end by the program's own rules, as the screens lead it. */
export function drive(vehicle: Vehicle, books: Books, lead: Lead): Drive {
  let walk = begin(vehicle, books, lead);
  while (walk.steps.length < mostSteps) {
    const next = onward(walk, vehicle);
    if (next === undefined) return ended(walk);
    walk = { ...next, troubles: [...next.troubles, ...blindness(next)] };
    if (walk.troubles.some((trouble) => trouble.startsWith('refused'))) return ended(walk);
  }
  return ended({ ...walk, troubles: [...walk.troubles, `no end after ${mostSteps} steps`] });
}

function begin({ script }: Vehicle, { tree, shop, library = [] }: Books, lead: Lead): Walk {
  const vehicle = { name: script.vehicle, facts: script.facts };
  const conditions = trusted(parseConditions(script));
  const about = { tree, shop, vehicle, who: 'a driver', conditions, units: 'us' } as const;
  const header = newHeader(about, stampAt(0).at);
  const led = ledStory(fold(header, []), { ...defaultSettings, lead });
  const world: World = {
    tree: (id) => {
      const found = library.find((one) => one.id === id);
      return found && { tree: found, shop };
    },
  };
  return { header, world, events: [], led, lead, steps: [], settled: [], troubles: [] };
}

/** Does what is due; undefined where the job ends. */
function onward(walk: Walk, vehicle: Vehicle): Walk | undefined {
  const { due } = walk.led.story;
  switch (due.kind) {
    case 'check':
      return answer(walk, vehicle, due.check);
    case 'proof':
      return answer(putBack(walk), vehicle, currentLeg(walk.led.story).tree.complaint.confirm);
    case 'named':
      return take(walk, { do: 'condemn', cause: due.cause, acknowledged: true });
    case 'repair':
      return repair(walk, due.cause);
    case 'leg': {
      const { tree, reason } = due;
      const on = vehicle.script.onto[walk.led.story.legs.length - 1];
      return on === tree ? take(walk, { do: 'leg', tree, reason }) : undefined;
    }
    default:
      return undefined;
  }
}

/** Closes what the screens name before a proof: it was not open when the complaint showed. */
const putBack = (walk: Walk): Walk =>
  opened(walk.led.story).reduce((now, close) => take(now, { do: 'access', close }), walk);

/** Takes an action as the screens and `enter` do. */
function take(walk: Walk, action: Action): Walk {
  const decision = decide(walk.led.story, action, walk.world);
  if (decision.kind === 'refused') {
    const { message, mend } = decision.problem;
    return { ...walk, troubles: [...walk.troubles, `refused: ${message} ${mend}`] };
  }
  const first = walk.events.length + 1;
  const added = decision.payloads.map((payload, index) =>
    newEvent(first + index, stampAt(first + index), payload),
  );
  const events = [...walk.events, ...added];
  const led = ledStory(fold(walk.header, events), { ...defaultSettings, lead: walk.lead });
  const warnings = decision.warnings.map((warning) => `warned: ${warning}`);
  const taken = { ...walk, events, led, troubles: [...walk.troubles, ...warnings] };
  const found = contradictionOf(led.story, added.at(-1));
  return found === undefined ? taken : settle(taken, found);
}

/**
 * Answers what the screens ask when a finding is worse than the one before it. A fault mended can
 * uncover another (volts lost at one place are not lost at the next), so after a repair it is new.
 * The complaint's own test may never get worse by a repair, nor any check with nothing changed.
 */
function settle(walk: Walk, { check, repairsBetween }: Contradiction): Walk {
  const worse = `"${check}" shows worse than before`;
  const complaint = check === currentLeg(walk.led.story).tree.complaint.confirm;
  if (repairsBetween === 0)
    return { ...walk, troubles: [...walk.troubles, `${worse}, and nothing was changed`] };
  const bad = complaint ? [`${worse}, by a repair of what was bad`] : [];
  const troubles = [...walk.troubles, ...bad];
  const settled = take({ ...walk, troubles }, { do: 'settle', as: 'new-since' });
  return { ...settled, settled: [...settled.settled, check] };
}

function answer(walk: Walk, { name, script }: Vehicle, id: string): Walk {
  const { story, own } = walk.led;
  const check = currentLeg(story).tree.checks[id];
  if (check === undefined) throw new RangeError(`the tree has no check ${id}`);
  const times = walk.steps.filter((step) => step.id === id).length;
  const mended = story.repairs.map(({ cause }) => cause);
  const given = answerOf(
    check,
    shownBy(script, id, mended, currentLeg(story).tree),
    `${name} ${id} ${times}`,
  );
  const needed = neededBy(currentLeg(story).tree, check);
  const brought = needed !== undefined && story.over.includes(needed.state);
  const begun = take(walk, {
    do: 'begin',
    check: id,
    acknowledged: true,
    ...(brought && { brought }),
  });
  if (begun.events.length === walk.events.length) return begun;
  const done = take(
    begun,
    given === 'cannot tell'
      ? { do: 'unsure', check: id }
      : { do: 'find', check: id, acknowledged: true, ...given },
  );
  if (done.events.length === begun.events.length) return done;
  const step: Step = {
    do: story.due.kind === 'proof' ? 'proof' : 'check',
    id,
    leg: story.legs.length - 1,
    shown: wordsOf(check, done, given),
    minutes: checkMinutes(story, id),
    advised:
      own.kind === 'exhausted' || (story.due.kind === 'check' && story.due.why === 'advised'),
  };
  return { ...done, steps: [...done.steps, step] };
}

type Given = { readonly result: string } | { readonly reading: string } | 'cannot tell';

/** The scripted text as an answer: a result's id, a reading, or `?` where nobody can tell. */
function answerOf(check: Check, text: string | undefined, seed: string): Given {
  const [healthy] = check.results;
  if (text === '?') return 'cannot tell';
  if (text === undefined) return { result: healthy?.id ?? '' };
  if (check.results.some(({ id }) => id === text)) return { result: text };
  const reading = metered(check, text, seed);
  return reading === undefined ? { result: text } : { reading };
}

function wordsOf(check: Check, { led }: Walk, given: Given): string {
  if (given === 'cannot tell') return 'cannot tell';
  const found = led.story.findings.at(-1);
  const ids = [found?.result, found?.orResult].flatMap((id) => id ?? []);
  const labels = ids.map((id) => check.results.find((one) => one.id === id)?.label ?? id);
  const counts = `${ids.join(' or ')} (${labels.join(' or ')})`;
  return 'reading' in given ? `${given.reading} = ${counts}` : counts;
}

function repair(walk: Walk, cause: string): Walk {
  const { story, own, advice } = walk.led;
  const { tree, shop } = currentLeg(story);
  const work = tree.causes[cause]?.repair;
  if (work === undefined) throw new RangeError(`the tree has no cause ${cause}`);
  const done = take(walk, { do: 'repair', cause, acknowledged: true });
  if (done.events.length === walk.events.length) return done;
  const place = placeOf(story.open, story.standing, story.over);
  const chance = advice?.suspects.find((one) => one.cause === cause)?.chance;
  const step: Step = {
    do: 'repair',
    id: cause,
    leg: story.legs.length - 1,
    shown: chance === undefined ? '' : `at ${Math.round(100 * chance)} %`,
    minutes: workMinutes(shop, work, place).total,
    advised: own.kind === 'exhausted' || walk.lead === 'quicker',
  };
  return { ...done, steps: [...done.steps, step] };
}

/** That the advice should lead here and has no belief to lead with. */
function blindness({ led: { own, story, advice }, lead }: Walk): readonly string[] {
  const onWay = mayLead({ ...story, due: own });
  const leads = own.kind === 'exhausted' || (lead === 'quicker' && onWay);
  return leads && advice === undefined
    ? ['the advice has no belief: the findings exclude one another']
    : [];
}

function ended({ header, world, events, led, steps, settled, troubles }: Walk): Drive {
  const { story } = led;
  const close = decide(story, { do: 'close', as: 'fixed' }, world);
  return {
    recorded: { header, events },
    steps,
    mended: story.repairs.map(({ cause }) => cause),
    condemned: story.condemned.map(({ cause }) => cause),
    end: story.due,
    trees: story.legs.map(({ tree }) => tree),
    closesFixed: close.kind === 'accepted',
    settled,
    troubles,
  };
}
