import fc from 'fast-check';
import { expect, test } from 'vitest';
import { feedsBeforeRepair } from '../../../src/core/drawing/feed-before-repair.ts';
import { ladderSvg } from '../../../src/core/drawing/ladder-svg.ts';
import type { FeedView } from '../../../src/core/drawing/feed-view.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { hostileText } from '../../helpers/hostile.ts';
import { shippedShop, shippedTree } from '../../helpers/library.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { xmlTrouble } from '../../helpers/xml.ts';

const read = (check: string, reading: string): Action => ({ do: 'find', check, reading });

const deadAmmeter: readonly Action[] = [
  { do: 'find', check: 'lamps-horn', result: 'horn-only' },
  read('bat-rest-volts', '12.6'),
  read('stud-volts', '12.55 12.5'),
  read('bulk-engine-volts', '12.55 12.4'),
  read('ammeter-volts', '12.55 12.4'),
  read('ammeter-drop', '12.2'),
];
const mended: readonly Action[] = [
  ...deadAmmeter,
  { do: 'condemn', cause: 'ammeter' },
  { do: 'repair', cause: 'ammeter' },
];

const viewAfter = (actions: readonly Action[]): FeedView | undefined =>
  feedsBeforeRepair(after(actions, headerFor(shippedTree('no-supply'), shippedShop())).story).at(0)
    ?.view;

function known(view: FeedView | undefined): FeedView {
  if (view === undefined) throw new Error('there is a feed path here');
  return view;
}

test('the span that loses the volts is crossed, once, and says how many', () => {
  const svg = ladderSvg('The feed', known(viewAfter(deadAmmeter)));

  expect(svg.match(/BAD: /g)).toHaveLength(1);
  expect(svg).toContain('BAD: 12.20 V');
  expect(svg).toMatch(/<desc id="desc">The fault lies between ammeter stud, battery side/);
});

test('after the repair it still shows what was read before it', () => {
  const [before, behind] = [known(viewAfter(deadAmmeter)), known(viewAfter(mended))];

  expect(ladderSvg('The feed', behind)).toBe(ladderSvg('The feed', before));
});

test('it belongs beside the finding that showed the bad stretch', () => {
  const { story } = after(mended, headerFor(shippedTree('no-supply'), shippedShop()));
  const drop = story.findings.find(({ check }) => check === 'ammeter-drop');

  expect(feedsBeforeRepair(story)).toMatchObject([{ shownBy: drop?.n, complaint: 0 }]);
});

test('there is no picture without a bad stretch, and none where the tree has no feed path', () => {
  expect(viewAfter([read('bat-rest-volts', '12.6')])).toBeUndefined();
  expect(viewAfter(deadAmmeter.slice(0, 3))).toBeUndefined();
  expect(feedsBeforeRepair(after([{ do: 'find', check: 'lamp', result: 'dark' }]).story)).toEqual(
    [],
  );
});

test('stations in a row that were not read are told as one', () => {
  const view = known(viewAfter(deadAmmeter));
  const svg = ladderSvg('The feed', view);
  const unread = [...view.ladder.supply, ...view.ladder.ground].filter(
    ({ found, otherwise }) => found === undefined && otherwise === undefined,
  );

  const told = [...svg.matchAll(/>(\d+) more, not read</g)].map(([, number]) => Number(number));
  expect(told.length).toBeGreaterThan(0);
  const alone = unread.filter(({ name }) => svg.includes(`>${name}<`));
  expect(told.reduce((sum, one) => sum + one, 0) + alone.length).toBe(unread.length);
});

test('any text in names stays text', () => {
  const view = known(viewAfter(deadAmmeter));
  const { supply, load } = view.ladder;

  fc.assert(
    fc.property(hostileText, (text) => {
      const ladder = {
        ...view.ladder,
        supply: supply.map((rung) => ({ ...rung, name: text })),
        load: { ...load, name: text },
      };
      expect(xmlTrouble(ladderSvg(text, { ...view, ladder }))).toBeUndefined();
    }),
    { numRuns: 60 },
  );
});
