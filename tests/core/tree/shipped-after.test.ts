import { expect, test } from 'vitest';
import { at } from '../../../src/core/at.ts';
import { shippedTrees } from '../../helpers/library.ts';

// What is made again after a repair is judged on a mended vehicle. Where it may be judged only
// while another check shows the fault, every good repair ends with a warning that means nothing.
test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
  '%s makes no check again after a repair that only holds while the fault is there',
  (_, { causes, checks }) => {
    const idle = Object.entries(causes).flatMap(([cause, { repair }]) =>
      repair.then.flatMap((id) =>
        Object.entries(checks[id]?.after ?? {})
          .filter(([first, shown]) => {
            const results = checks[first]?.results ?? [];
            return results.length > 0 && !shown.includes(at(results, 0).id);
          })
          .map(([first]) => `${cause}: ${id} after ${first}`),
      ),
    );

    expect(idle).toEqual([]);
  },
);
