import { describe, expect, test } from 'vitest';
import { trusted } from '../../../src/core/problem.ts';
import { asHtml, asMarkdown, asText } from '../../../src/core/telling/forms.ts';
import { tellTree } from '../../../src/core/telling/tell.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { parseTreeValue } from '../../../src/core/tree/parse.ts';
import { planted, type Fault } from '../../helpers/plant.ts';
import { smallShop } from '../../helpers/tree.ts';

const base: readonly Fault[] = [
  ['format', 2],
  ['checks.lamp.shows-with', { fuse: { always: 'dark' }, wire: { always: 'dark' } }],
  ['checks.look.background', undefined],
  ['checks.look.points', {}],
  ['checks.look.sound', { burnt: 2 }],
  ['checks.look.shows-with', { fuse: { burnt: 95 } }],
  ['causes.wire.short', 'the lamp wire'],
  ['causes.fuse.short', 'the fuse'],
];
const treeWith = (...faults: readonly Fault[]): Tree =>
  trusted(parseTreeValue(planted(...base, ...faults), 'small.json', smallShop));
const told = (...faults: readonly Fault[]): string =>
  asText(tellTree(treeWith(...faults), smallShop)).replace(/\s+/g, ' ');

describe('a tree read back', () => {
  test('says each row, each cause walked, what moves and what hides', () => {
    const page = told();
    expect(page).toContain('With the fuse: "burnt" 95 of 100, "whole" 5.');
    expect(page).toContain('A sound vehicle, "Is the fuse whole?": "whole" 98 of 100, "burnt" 2.');
    expect(page).toMatch(
      /The fuse: .* showed "burnt"; and the tree condemns the fuse\. Condemned rightly in about 9\d of 100/,
    );
    expect(page).toMatch(/"burnt" found first: the fuse \d+ to \d+/);
    expect(page).toContain(
      'the last of these is what you see: "12 V or more", "under 12 V", "under 2 V".',
    );
  });

  test('a row the wrong way round is a sentence that nobody would sign', () => {
    expect(told(['checks.look.shows-with', { fuse: { burnt: 5 } }])).toContain(
      'With the fuse: "whole" 95 of 100, "burnt" 5.',
    );
  });

  test('a row that a fact flips is said for both', () => {
    const page = told([
      'checks.look.shows-with',
      { fuse: [{ when: { choke: 'manual' }, is: { burnt: 40 } }, { burnt: 90 }] },
    ]);
    expect(page).toContain('With the fuse: "burnt" 90 of 100');
    expect(page).toContain('Where choke is manual, with the fuse: "whole" 60 of 100, "burnt" 40.');
  });

  test('one minute is told as one', () => {
    expect(told(['checks.look.minutes', 1])).toContain('1 minute.');
  });

  test('a cause behind the cause is said', () => {
    expect(told(['causes.fuse.because', ['wire']])).toContain(
      'It may have come by the lamp wire: look there too.',
    );
  });

  test('the same page as markdown and as one file for a browser, every text escaped', () => {
    const parts = tellTree(treeWith(['title', 'No <light> & *dark*']), smallShop);
    expect(asMarkdown(parts)).toMatch(/^# No &lt;light&gt; &amp; \\\*dark\\\*\n/);
    const html = asHtml(parts);
    expect(html).toContain('<h1>No &lt;light&gt; &amp; *dark*</h1>');
    expect(html.match(/<li>/g)?.length).toBe(html.match(/<\/li>/g)?.length);
  });
});
