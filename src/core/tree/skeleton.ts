const causes = {
  'first-cause': {
    name: 'What is wrong, as you would say it',
    where: 'Where on the vehicle it sits',
    odds: 60,
    shows: 'How it shows itself; odds are parts of a hundred, "unlisted" with them.',
    repair: {
      do: [
        'What to do first. Anything that can hurt needs an id from shop.json in "cautions".',
        'What to do next, one short step a line.',
      ],
      minutes: 20,
      // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, never awaited
      then: ['first-look'],
    },
  },
  'second-cause': {
    name: 'The next likeliest thing',
    where: 'Where it sits',
    odds: 30,
    shows: 'What a mechanic would notice.',
    repair: {
      do: ['How it is put right.'],
      minutes: 45,
      standing: { key: 'off', engine: 'off' },
      parts: ['What has to be bought, if anything'],
      part: 'small',
      // oxlint-disable-next-line unicorn/no-thenable -- as above
      then: ['second-reading'],
    },
  },
};

const checks = {
  'complaint-test': {
    kind: 'try',
    ask: 'Does the complaint show when you make it happen?',
    how: [
      'How to make it happen every time.',
      'The same test proves the repair, so it must be one that can pass.',
    ],
    healthy: 'What a good vehicle does here.',
    minutes: 2,
    results: [
      {
        id: 'gone',
        label: 'healthy first: it does not show',
        next: 'stop',
        reason: 'Why the way ends here, and what to do with that.',
      },
      { id: 'there', label: 'it shows', next: 'first-look' },
    ],
    // Every cause has a row here; "always" only where it cannot show otherwise.
    'shows-with': {
      'first-cause': { always: 'there' },
      'second-cause': { there: 90 },
      unlisted: { there: 'mostly' },
    },
    source: 'common practice, no source',
  },
  'first-look': {
    kind: 'look',
    ask: 'The quick check that tells most comes first',
    how: ['Two to five short steps.', 'Say what to look at, then what to look for.'],
    healthy: 'Whole and tight.',
    minutes: 2,
    results: [
      { id: 'good', label: 'healthiest result first', next: 'second-reading' },
      { id: 'bad', label: 'the more telling result later', next: 'cause:first-cause' },
    ],
    // Of a hundred sound vehicles, how many look bad.
    sound: 3,
    'shows-with': { 'first-cause': { bad: 90 } },
    source: 'common practice, no source',
  },
  'second-reading': {
    kind: 'measure',
    ask: 'A reading, with the unit it is taken in',
    how: ['Where the black lead goes.', 'Where the red lead goes.', 'When to read.'],
    healthy: '12 V or more',
    minutes: 4,
    'looks-at': ['second-cause'],
    standing: { battery: 'connected', key: 'run', engine: 'off' },
    tools: ['dvm'],
    reading: { quantity: 'voltage', unit: 'V', plausible: [0, 16] },
    // Where one result ends and the next begins: the labels get the numbers from here.
    limits: [12],
    results: [
      {
        id: 'full',
        label: 'full',
        next: 'stop',
        reason: 'Both listed causes are cleared: look further, and add what you find to this tree.',
      },
      { id: 'low', label: 'low', next: 'cause:second-cause' },
    ],
    sound: { low: 3 },
    'shows-with': { 'first-cause': { low: 'seldom' }, 'second-cause': { low: 'mostly' } },
    source: 'common practice, no source',
  },
};

/**
 * A tree to begin with: it passes every check as it stands, and its texts say what belongs in their
 * place (JSON has no comments).
 */
export const skeleton = (id: string): object => ({
  $schema: './tree.schema.json',
  format: 2,
  id,
  title: 'The complaint in a few words',
  complaint: { say: 'What the owner says, in plain words.', confirm: 'complaint-test' },
  fits: ['Which vehicles this is for'],
  start: 'first-look',
  alsoLikely: 0.2,
  unlisted: 10,
  causes,
  checks,
});
