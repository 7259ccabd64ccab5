import { writeUp } from '../../src/core/account/account.ts';
import type { Event, Payload } from '../../src/core/session/event.ts';
import { fold } from '../../src/core/session/fold.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { shippedShop, shippedTree } from '../helpers/library.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const wanted = 10_000;
const [tree, shop] = [shippedTree('no-supply'), shippedShop()];

const header = newHeader(
  {
    tree,
    shop,
    vehicle: {
      name: 'Orchard van',
      facts: { 'ground-side': 'negative', 'feed-meter': 'ammeter' },
    },
    who: 'JB',
    conditions: {},
    units: 'us',
  },
  '2026-04-11T10:00:00.000+00:00',
);

/** A session far longer than any: every check found at random over and over, and some repairs. */
function longSession(repairs: number): readonly Event[] {
  const random = makeRandom(20_260_411);
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const checks = Object.entries(tree.checks);
  const causes = Object.keys(tree.causes);
  return Array.from({ length: wanted }, (_, index): Event => {
    const n = index + 1;
    const minute = Math.floor(index / 60);
    const stamp = {
      at: `2026-04-${String(11 + Math.floor(minute / 1440)).padStart(2, '0')}T${String(Math.floor(minute / 60) % 24).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00.000+00:00`,
      run: 'r',
      mono: index * 1000,
      up: 100 + index,
    };
    return { n, ...stamp, ...payload() };
  });

  function payload(): Payload {
    const draw = random();
    const [check, model] = pick(checks) ?? ['', undefined];
    if (draw < 0.5) return { kind: 'noted', text: `Note ${Math.round(draw * 1e6)}: dry, no play.` };
    if (draw < 0.5 + repairs / wanted) {
      const cause = pick(causes) ?? '';
      return { kind: 'repaired', cause, parts: ['wire'], acknowledged: [] };
    }
    if (draw < 0.7) return { kind: 'check-begun', check, acknowledged: [] };
    const result = pick(model?.results ?? [])?.id ?? '';
    return { kind: 'found', check, result };
  }
}

for (const repairs of [0, 12, 100]) {
  const events = longSession(repairs);
  const story = fold(header, events);
  const record = { events: events.length, passedOver: 0, link: 'ab'.repeat(32) };
  const took = [0, 1, 2].map(() => {
    const before = performance.now();
    writeUp(story, record, { pictures: 'x.pictures' });
    return performance.now() - before;
  });
  say(
    `account of ${wanted} events, ${story.findings.length} findings and ${story.repairs.length} repairs: ${took.map((one) => one.toFixed(0)).join(', ')} ms (target 500 ms)`,
  );
}
