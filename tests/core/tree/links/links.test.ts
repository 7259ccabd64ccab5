import { describe, expect, test } from 'vitest';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { planted, told } from '../../../helpers/plant.ts';
import { smallShop } from '../../../helpers/tree.ts';

const parse = (value: unknown) => parseTreeValue(value, 'small.json', smallShop);

describe('names in a tree', () => {
  test.each([
    ['the start', 'start', 'lok', 'unknown-check start'],
    ['the baseline', 'baseline', ['look', 'ohms'], 'unknown-check baseline[1]'],
    [
      'a next check',
      'checks.look.results.0.next',
      'ohms',
      'unknown-check checks.look.results[0].next',
    ],
    [
      'a next cause',
      'checks.look.results.1.next',
      'cause:fuze',
      'unknown-cause checks.look.results[1].next',
    ],
    [
      'a cause without a name',
      'checks.look.results.1.next',
      'cause:',
      'unknown-cause checks.look.results[1].next',
    ],
    ['a row', 'checks.look.points.fuze', [0.5, 0.5], 'unknown-cause checks.look.points.fuze'],
    [
      'a check to come first',
      'checks.volts.after',
      { lok: ['whole'] },
      'unknown-check checks.volts.after',
    ],
    [
      'a result to come first',
      'checks.volts.after',
      { look: ['hole'] },
      'unknown-result checks.volts.after.look',
    ],
    [
      'a check to repeat',
      'causes.wire.repair.then',
      ['volts', 'ohms'],
      'unknown-check causes.wire.repair.then[1]',
    ],
    [
      'two results of one name',
      'checks.look.results.1.id',
      'whole',
      'result-twice checks.look.results[1].id',
    ],
    [
      'a caution',
      'checks.look.cautions',
      ['hot', 'acid'],
      'unknown-caution checks.look.cautions[1]',
    ],
    [
      'a caution of a repair',
      'causes.wire.repair.cautions',
      ['sparks'],
      'unknown-caution causes.wire.repair.cautions[0]',
    ],
    ['a tool', 'checks.volts.tools', ['scope'], 'unknown-tool checks.volts.tools[0]'],
    ['an access', 'checks.volts.access', ['hood'], 'unknown-access checks.volts.access[0]'],
    [
      'a word every object knows',
      'checks.look.results.0.next',
      'toString',
      'unknown-check checks.look.results[0].next',
    ],
    [
      'an own working as a cause',
      'checks.look.results.1.next',
      'cause:__proto__',
      'unknown-cause checks.look.results[1].next',
    ],
  ])('%s that leads nowhere is told', (_, path, value, expected) => {
    const parsed = parse(planted([path, value]));

    expect(told(parsed)).toEqual([expected]);
    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({ file: 'small.json' });
  });

  test("a complaint's check that is not there is told first", () => {
    expect(told(parse(planted(['complaint.confirm', 'bulb'])))[0]).toBe(
      'unknown-check complaint.confirm',
    );
  });

  test('a name that is nearly right is offered', () => {
    const parsed = parse(planted(['start', 'loom']));

    expect(parsed.kind === 'bad' && parsed.problems[0]).toMatchObject({
      message: 'There is no check "loom".',
      mend: 'Did you mean look?',
      value: 'loom',
    });
  });

  test('a tree without causes is told', () => {
    const parsed = parse(
      planted(
        ['causes', {}],
        ['checks.look.points', {}],
        ['checks.volts.points', {}],
        ['checks.look.results.1.next', 'stop'],
        ['checks.volts.results.1.next', 'stop'],
        ['checks.volts.results.2.next', 'stop'],
      ),
    );

    expect(told(parsed)).toEqual(['no-causes causes']);
  });

  test('no cause has the name of a fault that a repair brought', () => {
    const cause = { name: 'Clamp loose', odds: 5, repair: { do: ['Tighten it.'], minutes: 2 } };
    const parsed = parse(planted(['causes.brought-by-repair-1', cause]));

    expect(told(parsed)).toContain('reserved-name causes.brought-by-repair-1');
  });

  test('another tree, a stop and the unlisted cause need no entry', () => {
    const parsed = parse(
      planted(
        ['checks.look.results.0.next', 'tree:no-crank'],
        ['checks.look.points.unlisted', [0.9, 0.1]],
      ),
    );

    expect(told(parsed)).toEqual([]);
  });

  test('without a shop its names are taken as they are', () => {
    const data = planted(['checks.look.cautions', ['acid']]);

    expect(told(parseTreeValue(data, 'small.json'))).toEqual([]);
  });

  test('faults in several places are told all at once', () => {
    const parsed = parse(
      planted(
        ['start', 'nowhere'],
        ['checks.look.results.0.next', 'ohms'],
        ['checks.look.background', [0.5, 0.4]],
        ['checks.volts.results.0.from', 13],
        ['causes.wire.repair.then', ['ohms']],
        ['checks.volts.tools', ['scope']],
      ),
    );

    expect(told(parsed)).toEqual([
      'unknown-check start',
      'unknown-check checks.look.results[0].next',
      'row-sum checks.look.background',
      'band-gap checks.volts.results',
      'unknown-check causes.wire.repair.then[0]',
      'unknown-tool checks.volts.tools[0]',
    ]);
  });

  test('a fact that the shop does not ask for is told', () => {
    const parsed = parse(planted(['checks.look.when', { chok: 'manual' }]));

    expect(parsed.kind).toBe('bad');
  });

  test('a value that the fact cannot have is told', () => {
    const parsed = parse(planted(['checks.look.when', { choke: 'by-foot' }]));

    expect(parsed.kind).toBe('bad');
  });
});
