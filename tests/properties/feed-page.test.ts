import { expect, test } from 'vitest';
import { feedView, type FeedView, type Leads } from '../../src/core/drawing/feed-view.ts';
import { rungsOf } from '../../src/core/drawing/ladder-view.ts';
import { trusted } from '../../src/core/problem.ts';
import { quickAdvice } from '../../src/core/reason/advice/advise.ts';
import { inputFrom, leftOut } from '../../src/core/reason/history/from-story.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { spanBetween, spanId } from '../../src/core/feed/path.ts';
import { currentLeg, type Story } from '../../src/core/session/story.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { circuitWith, walked, type Circuit } from '../helpers/by-circuit.ts';
import { shippedShop, shippedTree, shippedTrees } from '../helpers/library.ts';
import { headerFor } from '../helpers/story.ts';

const withPath = shippedTrees().flatMap(({ id, feed }) => (feed === undefined ? [] : [id]));

function leadsAt(story: Story): Leads | undefined {
  const input = inputFrom(story);
  if (input.kind === 'bad') return undefined;
  const advice = trusted(quickAdvice(input.value, { leaveOut: leftOut(story) }));
  const chances = advice.suspects.map(({ cause, chance }) => [cause, chance] as const);
  return {
    chances: new Map([...chances, ['unlisted', advice.unlisted]]),
    ranked: advice.next.flatMap((step) => (step.do === 'check' ? [step.id] : [])),
  };
}

function spanOf({ causes, feed }: Tree, cause: string): string | undefined {
  const ends = causes[cause]?.span;
  const span = ends && feed && spanBetween(feed, ends);
  return span && spanId(span);
}

/** A place is told as the fault only where all findings speak for it, and none of theirs as cleared. */
function placeTroubles(tree: Tree, { located }: FeedView, { chances }: Leads): string[] {
  const chanceOn = (span: string): number =>
    [...chances].reduce((sum, [id, chance]) => (spanOf(tree, id) === span ? sum + chance : sum), 0);
  const doubted = located.faults.filter(
    ({ stretch }) =>
      stretch.spans.reduce((sum, span) => sum + chanceOn(span), chances.get('unlisted') ?? 0) < 0.5,
  );
  const cleared = located.stretches.filter(
    ({ verdict, spans }) => verdict === 'sound' && spans.some((span) => chanceOn(span) > 0.5),
  );
  return [
    ...doubted.map(({ stretch }) => `called bad against the findings: ${stretch.spans.join()}`),
    ...cleared.map(({ spans }) => `cleared against the findings: ${spans.join()}`),
  ];
}

/** What the walk names stands on the page, and the probe goes nowhere else. */
function namedTroubles(tree: Tree, cause: string, { located, unshown, next }: FeedView): string[] {
  const span = spanOf(tree, cause);
  const shown = located.faults.some(({ stretch }) => stretch.spans.includes(span ?? ''));
  const told = span === undefined || shown || unshown === tree.causes[cause]?.name;
  return [
    ...(told ? [] : [`silent on ${cause}, which the walk names`]),
    ...(next.length === 0 ? [] : ['probes on where a cause is named']),
  ];
}

/** The probe goes where the walk sends it. */
function probeTroubles(tree: Tree, check: string, { next }: FeedView): string[] {
  const feed = tree.checks[check]?.feed;
  if (feed?.reads !== 'volts') return [];
  const asked = [feed.station, feed.against].map((id) => id && tree.feed?.stations[id]?.name);
  return next.some((name) => asked.includes(name))
    ? []
    : [`sends the probe to ${next.join()}, the walk to ${asked.join()}`];
}

function walkTroubles(story: Story, view: FeedView): string[] {
  const { due } = story;
  const { tree } = currentLeg(story);
  if (due.kind === 'named') return namedTroubles(tree, due.cause, view);
  return due.kind === 'check' ? probeTroubles(tree, due.check, view) : [];
}

/** Every station that was read to the battery's negative post still shows a number. */
function lostReadings(story: Story, { ladder }: FeedView): string[] {
  const { checks } = currentLeg(story).tree;
  const read = new Set(
    story.findings.flatMap(({ check }) => {
      const feed = checks[check]?.feed;
      return feed?.reads === 'volts' && feed.against === undefined ? [feed.station] : [];
    }),
  );
  return rungsOf(ladder)
    .filter(({ found, otherwise }) => found === undefined && otherwise === undefined)
    .filter(({ station }) => read.has(station))
    .map(({ name }) => `forgot what was read at ${name}`);
}

function troublesOn(tree: Tree, circuit: Circuit, seed: number): readonly string[] {
  const header = headerFor(tree, shippedShop());
  return [...walked(header, circuit, makeRandom(seed))].flatMap((story) => {
    const leads = leadsAt(story);
    const view = feedView(story, leads);
    if (view === undefined) throw new Error('no feed path');
    const impossible = circuit.change === undefined ? [] : view.located.wrong;
    return [
      ...(leads === undefined ? [] : placeTroubles(currentLeg(story).tree, view, leads)),
      ...walkTroubles(story, view),
      ...lostReadings(story, view),
      ...impossible.map(({ from, to }) => `calls a right reading wrong: ${from}, ${to}`),
    ].map((words) => `${circuit.cause}, seed ${seed}, ${JSON.stringify(story.due)}: ${words}`);
  });
}

test.each(withPath)('the feed page of %s says what the belief and the walk say', (id) => {
  const tree = shippedTree(id);
  const random = makeRandom(7);

  const faulty = Object.keys(tree.causes).flatMap(
    (cause) => circuitWith(tree, cause, random) ?? [],
  );
  const troubles = faulty.flatMap((circuit, seed) => troublesOn(tree, circuit, seed));
  const strays = [1, 2, 3, 4].flatMap((seed) =>
    troublesOn(tree, { cause: faulty[0]?.cause ?? '', change: undefined }, seed),
  );

  expect(faulty.length).toBeGreaterThan(2);
  expect([...troubles, ...strays]).toEqual([]);
});
