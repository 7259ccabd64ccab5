import type { Action } from '../../src/core/session/action.ts';
import type { Event } from '../../src/core/session/event.ts';
import type { Stamp } from '../../src/core/session/kinds/shapes.ts';
import type { KeptPhoto } from '../../src/core/session/record/photo.ts';
import { newEvent } from '../../src/core/session/read-event.ts';
import { fold } from '../../src/core/session/fold.ts';
import type { Header } from '../../src/core/session/header/header.ts';
import { newHeader } from '../../src/core/session/header/new-header.ts';
import type { World } from '../../src/core/session/rules/ruling.ts';
import { decide } from '../../src/core/session/rules/rules.ts';
import type { Story } from '../../src/core/session/story.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import type { Shop } from '../../src/core/tree/shop.ts';
import { smallShop, smallTree } from './tree.ts';

/** A clock that goes on one minute an event, from 10:00 on one day in April. */
export const stampAt = (minute: number): Stamp => ({
  at: `2026-04-11T${String(10 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00.000+00:00`,
  run: 'run-1',
  mono: minute * 60_000,
  up: 5000 + minute * 60,
});

export const headerFor = (
  tree: Tree = smallTree(),
  shop: Shop = smallShop,
  facts: Record<string, string> = {},
): Header =>
  newHeader(
    {
      tree,
      shop,
      vehicle: { name: 'Orchard van', facts },
      who: 'JB',
      conditions: {},
      units: 'us',
    },
    stampAt(0).at,
  );

/** A photo that lies beside its session. */
export const keptPhoto: KeptPhoto = {
  file: 'job.photos/01-photo.png',
  sha256: 'a'.repeat(64),
  bytes: 3,
};

/** A world without other trees, in which every photo has been read. */
const here: World = { tree: () => undefined, photo: keptPhoto };

/** What is known after some actions, all of which must be accepted. */
export function after(
  actions: readonly Action[],
  header: Header = headerFor(),
  world: World = here,
) {
  let events: readonly Event[] = [];
  let story: Story = fold(header, events);
  for (const action of actions) {
    const decision = decide(story, action, world);
    if (decision.kind === 'refused') throw new Error(`refused: ${decision.problem.message}`);
    const added = decision.payloads.map((payload, index) => {
      const n = events.length + 1 + index;
      return newEvent(n, stampAt(n), payload);
    });
    events = [...events, ...added];
    story = fold(header, events);
  }
  return { story, events, header };
}

/** The problem code that an action meets, or `accepted`. */
export function verdict(story: Story, action: Action): string {
  const decision = decide(story, action, here);
  return decision.kind === 'refused' ? decision.problem.code : 'accepted';
}
