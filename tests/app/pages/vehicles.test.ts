import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { newVehicle } from '../../../src/core/session/vehicle/vehicle.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { keepVehicle, loadVehicles } from '../../../src/store/vehicles.ts';
import { makeProgram, press, type Made } from '../../helpers/program.ts';

const kept = ({ folder }: Made) =>
  loadVehicles(nodeFiles, join(folder, 'sessions')).kept.map(({ vehicle }) => vehicle);

/** A program beside whose sessions a vehicle is kept. */
function withVan(facts: Readonly<Record<string, string>>): Made {
  const made = makeProgram();
  const vehicle = { ...newVehicle('Orchard van'), facts };
  keepVehicle(nodeFiles, join(made.folder, 'sessions'), { vehicle });
  return made;
}

/** Answers what is still asked, by the same keys each, until the job is begun. */
function begin({ program }: Made, keys = '<end><enter>'): void {
  for (let guard = 0; guard < 30 && program.state().session === undefined; guard += 1)
    press(program, keys);
  if (program.state().session === undefined) throw new Error('no job was begun');
}

describe('the page of a vehicle', () => {
  test('makes one by its name, and takes its lines one by one', () => {
    const made = makeProgram();
    press(made.program, 'v<enter>Orchard van<enter><enter>1968<enter><down><enter>pickup<enter>');

    expect(kept(made)).toEqual([{ ...newVehicle('Orchard van'), year: 1968, body: 'pickup' }]);
  });

  test('turns a fact through its kinds and back to not known', () => {
    const made = makeProgram();
    press(made.program, 'v<enter>Van<enter>');
    const seen = ['12-volt', '6-volt', undefined].map(() => {
      press(made.program, 'Z5');
      return kept(made)[0]?.facts['volts'];
    });

    expect(seen).toEqual(['12-volt', '6-volt', undefined]);
  });

  test('a line that cannot be is told; the field stays, and the file is as it was', () => {
    const made = makeProgram();
    press(made.program, 'v<enter>Van<enter><enter>old<enter>');

    expect(made.program.state()).toMatchObject({
      notice: { kind: 'problem', text: expect.stringContaining('"old" is no year') },
      screen: { kind: 'vehicle', typed: { before: 'old' } },
    });
    expect(kept(made)).toEqual([newVehicle('Van')]);
  });

  test('a name that is known opens that vehicle and makes no second one', () => {
    const made = withVan({});
    press(made.program, 'v<end><enter>ORCHARD van<enter>');

    expect(made.program.state().screen).toMatchObject({
      kind: 'vehicle',
      vehicle: { name: 'Orchard van' },
    });
    expect(kept(made)).toHaveLength(1);
  });

  test('what a job left to do stands first, and is gone by y', () => {
    const made = withVan({ volts: '12-volt' });
    const { program } = made;
    press(program, 'snothing at all');
    press(program, '<enter><enter>1');
    begin(made);
    for (const text of ['grommet', 'strap'])
      program.dispatch({ kind: 'acted', action: { do: 'follow-up', text } });
    program.dispatch({ kind: 'acted', action: { do: 'close', as: 'given-up' } });
    const next = makeProgram({ folder: made.folder });
    press(next.program, 'v<enter>y');

    expect(kept(made)[0]?.done).toHaveLength(1);
  });
});

describe('a new job', () => {
  // Words an owner uses, each of which stands in what the tree lets its owner say, not in its title.
  test.each([
    ['smells of fuel', 'fuel-loss'],
    ['steams', 'overheat'],
    ['clicks', 'no-crank'],
    ['pedal', 'brakes'],
    ['no supply', 'no-supply'],
    ['keeps blowing fuses', 'circuit-burns'],
    ['petrol guage wrong', 'gauges'],
  ])('finds the complaint by "%s"', (words, tree) => {
    const { program } = makeProgram();
    press(program, `s${words}`);
    press(program, '<enter>');

    expect(program.state().screen).toMatchObject({ form: { at: 1, answers: { tree } } });
  });

  test('offers the vehicles that are known and asks nothing that is known of them', () => {
    const made = withVan({ volts: '12-volt', 'feed-meter': 'ammeter' });
    press(made.program, 'snothing at all');
    press(made.program, '<enter><enter>');
    const { screen } = made.program.state();

    expect(screen).toMatchObject({ kind: 'start', form: { at: 2 } });
    press(made.program, '1');
    begin(made);
    const { header } = made.program.state().session ?? {};
    expect(header?.vehicle).toMatchObject({
      name: 'Orchard van',
      facts: { volts: '12-volt', 'feed-meter': 'ammeter' },
    });
  });

  test('of a vehicle known to have 6 V is refused where it is chosen', () => {
    const made = withVan({ volts: '6-volt' });
    press(made.program, 'sflat');
    press(made.program, '<enter><enter>1');

    expect(made.program.state()).toMatchObject({
      screen: { kind: 'start', form: { at: 2 } },
      notice: { text: expect.stringContaining('Written for 12 V') },
    });
  });

  test('of one that is new makes its file, with what was answered', () => {
    const made = makeProgram();
    press(made.program, 'snothing at all');
    press(made.program, '<enter><enter>Barn truck<enter>');
    begin(made, '1<enter>');
    const file = join(made.folder, 'sessions', 'vehicles', 'barn-truck.json');

    expect(existsSync(file)).toBe(true);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({
      name: 'Barn truck',
      facts: made.program.state().session?.header.vehicle.facts,
    });
  });

  test('drops what was answered of one vehicle when another is chosen', () => {
    const made = withVan({ volts: '12-volt' });
    keepVehicle(nodeFiles, join(made.folder, 'sessions'), { vehicle: newVehicle('Barn truck') });
    press(made.program, 'snothing at all');
    // Barn truck stands first: a fact is answered, then the form goes back to the vehicles.
    press(made.program, '<enter><enter>1<enter><enter><enter>1<esc><esc><esc><esc><esc>2');
    const { screen } = made.program.state();

    expect(screen.kind === 'start' && Object.keys(screen.form.answers).toSorted()).toEqual([
      'altitude',
      'known-vehicle',
      'said',
      'temperature',
      'tree',
      'who',
    ]);
  });
});
