import { describe, expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { showMarkdown } from '../../../src/core/account/forms/markdown.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { reviewBlocks } from '../../../src/core/review/outline.ts';
import { reviewOf } from '../../../src/core/review/review.ts';
import { guardedAfter, guardedTree, opened, see } from '../../helpers/guarded.ts';
import type { Action } from '../../../src/core/session/action.ts';

const despite = 'the owner looked at both this morning';
const provenance = { events: 1, passedOver: 0, link: 'ab' };

/** A job in which one check and one repair went past a safeguard. */
const passing: readonly Action[] = [
  { ...see('heat-run', 'boils'), despite },
  see('cold-level', 'low'),
  see('fan-spin', 'holds'),
  { do: 'repair', cause: 'late', acknowledged: true, despite: 'the stick is broken' },
];

describe('a safeguard that was passed', () => {
  const { story, events, header } = guardedAfter(passing);

  test('is told in the account in the past, with what the tree says of it and the reason given', () => {
    const { markdown } = writeUp(story, provenance);
    const text = markdown.replaceAll('\\', '');

    expect(text).toContain(
      ' went on with "Does it boil again at a fast idle?" although "Is the oil on the dipstick clean?", which comes first, had not been made yet ("Oil that is milky is coolant in the sump: cranked, a cylinder full of it bends a rod; run, the bearings go in a minute."); and "How high is the coolant, cold?", which comes first, had not been made yet ("Run dry, the head cracks within minutes; filled hot, it cracks at once."). The reason given: "the owner looked at both this morning".',
    );
    expect(text).toMatch(/ went on with the repair \([^)]+\) although "Is the oil/i);
    expect(text).toContain('The reason given: "the stick is broken".');
    // The cautions of the step stand whole among those of the job.
    const cautions = text.slice(text.indexOf('## Cautions in full'));
    const untold = (guardedTree.checks['heat-run']?.cautions ?? []).filter(
      (id) => !cautions.includes(header.shop.cautions[id]?.text ?? '?'),
    );
    expect(untold).toEqual([]);
  });

  test('for a cause that was named before is told without naming it twice', () => {
    const late = { do: 'condemn', cause: 'late' } as const;
    const { markdown } = writeUp(guardedAfter([late, { ...late, despite }]).story, provenance);

    expect(markdown.match(/named the/g)).toHaveLength(1);
    expect(markdown).toContain(' went on with the repair');
  });

  test('is told in the review before any choice', () => {
    const review = reviewOf('s', { header, events }, { vehicles: 0 });
    const text = showMarkdown(reviewBlocks([{ review, story: fold(header, events) }])).replaceAll(
      '\\',
      '',
    );

    expect(review.habits.safeguardsPassed).toHaveLength(2);
    expect(text).toContain('Safety first: the work was gone on');
    expect(text).toContain(`The reason given: "${despite}".`);
  });

  test('leaves nothing in an account or a review where none was', () => {
    const clean = guardedAfter([...opened, see('heat-run', 'boils')]);

    expect(writeUp(clean.story, provenance).markdown).not.toContain('went on');
    expect(reviewOf('s', clean, { vehicles: 0 }).habits.safeguardsPassed).toEqual([]);
  });
});
