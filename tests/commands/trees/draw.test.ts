import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { nextsOf } from '../../../src/core/tree/way/next.ts';
import { runCommand } from '../../helpers/commands.ts';
import { shippedTrees } from '../../helpers/library.ts';
import { xmlTrouble } from '../../helpers/xml.ts';

const run = (...args: readonly string[]) => runCommand(trees, ['draw', ...args]);
const all = shippedTrees().map((tree) => [tree.id, tree] as const);

/** The page on one line: what it says, however it is folded. */
const unfolded = (page: string): string => page.replace(/\s+/g, ' ');

test.each(all)(
  'the page of %s has every check, result and cause on 78 columns',
  async (id, tree) => {
    const { code, out } = await run(id);
    const words = unfolded(out);
    const said = [
      ...Object.values(tree.checks).flatMap(({ ask, results }) => [
        ask,
        ...results.map(({ label }) => `${label} ->`),
      ]),
      ...Object.values(tree.causes).map(({ name }) => `- ${name}`),
      ...(tree.feed?.spans ?? []).map(({ from }) => `${tree.feed?.stations[from]?.name} --`),
    ];

    expect(code).toBe(0);
    expect(said.filter((one) => !words.includes(unfolded(one)))).toEqual([]);
    expect(out.split('\n').filter((line) => line.length > 78)).toEqual([]);
  },
);

test.each(all)('a result on the page of %s leads to the check of that number', async (id, tree) => {
  const words = unfolded((await run(id)).out);
  // The probes that part a row of branches ask alike: their steps say which they part.
  const asks = Object.values(tree.checks).map(({ ask }) => ask);
  const alone = Object.entries(tree.checks).filter(
    ([, { ask }]) => asks.indexOf(ask) === asks.lastIndexOf(ask),
  );
  const numbers = new Map(
    alone.map(([check, { ask }]) => {
      const before = words.slice(0, words.indexOf(`. ${unfolded(ask)} [`));
      return [check, before.split(' ').at(-1)] as const;
    }),
  );
  const leads = Object.entries(tree.checks).flatMap(([check, { results }]) =>
    results.flatMap(({ label, next, leads: first = [] }) => {
      const number = next === undefined ? undefined : numbers.get(next);
      const before = first.length === 0 ? `${unfolded(label)} -> ` : '; else ';
      return number === undefined ? [] : [{ check, line: `${before}${number} ` }];
    }),
  );

  expect(new Set(numbers.values()).size).toBe(alone.length);
  expect(alone.length).toBeGreaterThan(asks.length / 2);
  expect(leads.length).toBeGreaterThan(0);
  expect(leads.filter(({ line }) => !words.includes(line))).toEqual([]);
});

/** What a picture says in its texts, folded lines joined. */
const textsOf = (svg: string): string =>
  [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)]
    .map(([, text = '']) => text)
    .join(' ')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');

test.each(all)('%s is drawn with every check, result and cause told whole', async (id, tree) => {
  const { code, out } = await run(id, '--as', 'svg');
  const words = textsOf(out);
  const ledTo = Object.values(tree.checks)
    .flatMap(({ results }) => results.flatMap(nextsOf))
    .flatMap((next) => tree.causes[next.replace('cause:', '')]?.name ?? []);
  const said = [
    ...Object.values(tree.checks).flatMap(({ ask, results }) => [
      `. ${ask}`,
      ...results.map(({ label }) => label),
    ]),
    ...ledTo,
  ];

  expect(code).toBe(0);
  expect(xmlTrouble(out.trim())).toBeUndefined();
  expect(said.filter((one) => !words.includes(unfolded(one)))).toEqual([]);
  expect(words).not.toContain('…');
});

test.each(all)('a drawing of %s has a way in for each check that is led to', async (id, tree) => {
  const { out } = await run(id, '--as', 'svg');
  const nexts = Object.values(tree.checks).flatMap(({ results }) => results.flatMap(nextsOf));
  const checks = nexts.filter((next) => next in tree.checks);

  // A row that leads to a check has its number on the wire; each check led to has one arrow.
  expect(out.match(/>to \d+<\/text>/g)).toHaveLength(checks.length);
  expect(out.match(/ l8 -4 v8 Z/g)).toHaveLength(new Set(checks).size);
});

test.each(all)(
  '%s as a chart has no arrow to or from a box that is not there',
  async (id, tree) => {
    const { code, out } = await run(id, '--as', 'mermaid');
    const arrows = [...out.matchAll(/^ {2}(\w+) -->\|".*?"\| (\w+)(\W?)/gm)];
    const boxes = new Set([...out.matchAll(/^ {2}(\w+)[[{]/gm)].map(([, box]) => box));
    const results = Object.values(tree.checks).flatMap((check) => check.results);

    expect(code).toBe(0);
    expect(out).toMatch(/^flowchart TD\n/);
    expect(arrows).toHaveLength(results.flatMap(nextsOf).length);
    // An arrow that ends the way brings its own box along.
    const lost = arrows.filter(
      ([, from, to, own]) => !boxes.has(from) || (own === '' && !boxes.has(to)),
    );
    expect(lost.map(([line]) => line)).toEqual([]);
  },
);

test.each([
  ['no tree', []],
  ['a form that is not', ['no-crank', '--as', 'png']],
  ['a tree that is not', ['no-cranck']],
])('%s is wrong use', async (_, args) => {
  const { code, out, err } = await run(...args);

  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(/^droplight: /);
});
