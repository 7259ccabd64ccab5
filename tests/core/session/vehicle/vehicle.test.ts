import { describe, expect, test } from 'vitest';
import { changeVehicle, sheetKeys } from '../../../../src/core/session/vehicle/change.ts';
import { afterStart, forJob } from '../../../../src/core/session/vehicle/job.ts';
import { vehicleLines } from '../../../../src/core/session/vehicle/lines.ts';
import { parseVehicle, vehicleText } from '../../../../src/core/session/vehicle/parse.ts';
import { leftToDo, pastJob } from '../../../../src/core/session/vehicle/past.ts';
import {
  newVehicle,
  sameVehicle,
  type Vehicle,
} from '../../../../src/core/session/vehicle/vehicle.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';
import { after } from '../../../helpers/story.ts';

const library = { trees: shippedTrees(), shop: shippedShop() };
const known = { library, on: '2026-04-11' };
const van = newVehicle(' Orchard van ');

const said = (vehicle: Vehicle, key: string, text: string) =>
  changeVehicle(vehicle, { key, text }, known);

/** The vehicle after several lines, each of which must be taken. */
function withLines(lines: readonly (readonly [key: string, text: string])[]): Vehicle {
  return lines.reduce((vehicle, [key, text]) => {
    const next = said(vehicle, key, text);
    if (next.kind === 'bad') throw new Error(next.problems[0]?.message);
    return next.value;
  }, van);
}

const full = withLines([
  ['year', '1968'],
  ['body', 'pickup'],
  ['engine', 'straight six, 4.1 L'],
  ['odometer', '61200'],
  ['odometer', '61,350 mi'],
  ['cylinders', 'six'],
  ['idle-vacuum', '18 inHg (shop manual, page 12)'],
  ['dwell', '33'],
  ['modification', 'relays for the lamps (poor)'],
  ['modification', 'radio'],
  ['remark', 'starts best with half choke'],
]);

describe('the sheet of a vehicle', () => {
  test('takes each kind of line, an odometer with the day, a figure with where it was read', () => {
    expect(full).toEqual({
      format: 1,
      name: 'Orchard van',
      year: 1968,
      body: 'pickup',
      engine: 'straight six, 4.1 L',
      facts: { cylinders: 'six' },
      sheet: {
        'idle-vacuum': { value: 18, unit: 'inHg', typed: '18 inHg', where: 'shop manual, page 12' },
        dwell: { value: 33, unit: 'deg', typed: '33' },
      },
      odometer: [
        { value: 61200, unit: 'mi', typed: '61200', on: '2026-04-11' },
        { value: 61350, unit: 'mi', typed: '61,350 mi', on: '2026-04-11' },
      ],
      modifications: [{ what: 'relays for the lamps', quality: 'poor' }, { what: 'radio' }],
      remarks: ['starts best with half choke'],
      done: [],
    });
  });

  test('empty takes a line away, of a list the last', () => {
    for (const key of ['year', 'body', 'engine', 'cylinders', 'idle-vacuum', 'remark'])
      expect(said(full, key, ' ')).not.toEqual({ kind: 'good', value: full });
    expect(said(full, 'odometer', '')).toMatchObject({
      value: { odometer: [{ value: 61200 }] },
    });
    expect(said(full, 'modification', '')).toMatchObject({
      value: { modifications: [{ what: 'relays for the lamps' }] },
    });
  });

  test.each([
    ['year', '68', 'vehicle-line'],
    ['year', '1492', 'vehicle-line'],
    ['odometer', 'many', 'reading-not-a-number'],
    ['odometer', '12 ft', 'vehicle-line'],
    ['odometer', '-3', 'vehicle-line'],
    ['cylinders', '6', 'unknown-fact'],
    ['idle-vacuum', '18 V', 'reading-unit-wrong'],
    // 40 inHg less 2 is more vacuum than there is air.
    ['idle-vacuum', '40', 'book-implausible'],
    ['cylinder', 'six', 'vehicle-line'],
    ['__proto__', 'six', 'vehicle-line'],
    ['body', 'x'.repeat(201), 'vehicle-line'],
  ])('%s "%s" is refused in words, and nothing changes', (key, text, code) => {
    const refused = said(full, key, text);

    expect(refused).toMatchObject({ kind: 'bad', problems: [{ code }] });
    expect(refused.kind === 'bad' && refused.problems[0]?.mend).toMatch(/\w/);
  });

  test('every line that can be said is told, by the key that says it', () => {
    const keys = new Set(vehicleLines(full, library.shop).map(({ key }) => key));

    expect([...keys].toSorted()).toEqual([...sheetKeys(library.shop)].toSorted());
  });

  test('what a line shows can be typed again and gives the same sheet', () => {
    const again = vehicleLines(full, library.shop)
      .filter(({ typed, key }) => typed !== '' && !['odometer'].includes(key))
      .map(({ key, typed }) => [key, typed] as const);
    const { odometer: _, ...rest } = full;

    expect(withLines(again)).toMatchObject({
      ...rest,
      sheet: { 'idle-vacuum': { value: 18, unit: 'inHg', where: 'shop manual, page 12' } },
    });
  });
});

describe('the file of a vehicle', () => {
  test('is read back as it was written', () => {
    for (const vehicle of [van, full])
      expect(parseVehicle(vehicleText(vehicle), 'van.json')).toEqual({
        kind: 'good',
        value: vehicle,
      });
  });

  test.each([
    ['{"format": 1}', 'name'],
    ['{"format": 1, "name": "Van", "year": "1968"}', 'year'],
    ['{"format": 1, "name": "Van", "boddy": "pickup"}', 'boddy'],
    ['{"format": 2, "name": "Van"}', 'format'],
  ])('%s is told with its place', (text, path) => {
    const read = parseVehicle(text, 'van.json');

    expect(read).toMatchObject({ kind: 'bad', problems: [{ file: 'van.json', line: 1 }] });
    expect(JSON.stringify(read)).toContain(path);
  });
});

describe('a vehicle and its jobs', () => {
  test('a new job takes over what is known; what was asked anew counts before it', () => {
    expect(forJob(full, { facts: { cylinders: 'eight', ballast: 'none' } })).toMatchObject({
      name: 'Orchard van',
      year: 1968,
      odometer: { value: 61350, unit: 'mi' },
      facts: { cylinders: 'eight', ballast: 'none' },
      sheet: full.sheet,
    });
    expect(forJob(van)).toEqual({ name: 'Orchard van', facts: {} });
  });

  test('and leaves in the file what it was told', () => {
    const told = forJob(full, { facts: { ballast: 'none' } });

    expect(afterStart(full, told)).toEqual({
      ...full,
      facts: { cylinders: 'six', ballast: 'none' },
    });
  });

  test('one name is one vehicle, whatever its case and spaces', () => {
    expect(sameVehicle('Orchard van', ' orchard  VAN')).toBe(true);
    expect(sameVehicle('Orchard van', 'Orchard van 2')).toBe(false);
  });

  test('a past job tells how it ended and what it left, the unsafe first, without what is done', () => {
    const { story } = after([
      { do: 'follow-up', text: 'look at the grommet' },
      { do: 'follow-up', text: 'brake hose cracked', urgency: 'unsafe' },
      { do: 'part-off', part: 'air cleaner' },
      { do: 'close', as: 'handed-on', text: 'no time' },
    ]);
    const job = pastJob(story, van);
    const session = story.header.id;

    expect(job).toMatchObject({ ended: 'handed-on', mended: [], apart: ['air cleaner (bag 1)'] });
    expect(leftToDo([job]).map(({ text }) => text)).toEqual([
      'brake hose cracked',
      'look at the grommet',
    ]);
    const ticked = pastJob(story, { done: [{ session, n: job.left[1]?.n ?? 0 }] });
    expect(ticked.left.map(({ text }) => text)).toEqual(['look at the grommet']);
  });
});
