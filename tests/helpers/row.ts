/** So many fuses in a row, each with one thing on it that may burn it, all as likely and as near. */
export const rowOf = (many: number) => {
  const names = Array.from({ length: many }, (_, index) => `thing-${index + 1}`);
  return {
    names,
    tree: {
      format: 2,
      id: 'row',
      title: 'One of a row',
      complaint: { say: 'It burns.', confirm: 'burns' },
      start: 'pull',
      unlisted: 0,
      causes: Object.fromEntries(
        names.map((name) => [
          name,
          { name, odds: 10, repair: { do: ['Mend it.'], minutes: 30, part: 'small' } },
        ]),
      ),
      checks: {
        burns: {
          kind: 'try',
          ask: 'Does it burn?',
          minutes: 1,
          results: [
            { id: 'holds', label: 'holds', next: 'stop', reason: 'It holds.' },
            { id: 'burns', label: 'burns', next: 'pull' },
          ],
          'shows-with': Object.fromEntries(names.map((name) => [name, { always: 'burns' }])),
        },
      },
      branches: {
        pull: {
          probe: {
            kind: 'try',
            ask: 'These out: does it hold?',
            how: ['Out together: {these}.'],
            healthy: 'It burns all the same.',
            minutes: 3,
            elsewhere: { label: 'burns' },
            here: { label: 'holds' },
            source: 'common practice, no source',
          },
          of: Object.fromEntries(
            names.map((name) => [
              name,
              // No name may hold another: the driver reads in the step which are out.
              { name: `fuse <${name}>`, minutes: 0, hangs: { [name]: 100 }, next: `cause:${name}` },
            ]),
          ),
          none: { next: 'stop', reason: 'None of them.' },
        },
      },
    },
  };
};
