import { chosen, measured, optional } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { lookUp, lookUpLog } from '../../table.ts';
import type { Table } from '../../table.ts';
import { convert } from '../../units/units.ts';
import { iecFlexible, iecStranded, tinned } from './tables.ts';

/** Resistivity of annealed copper at 20 C, ohm mm2/m: International Annealed Copper Standard. */
const copper = 0.017241;
/** Per kelvin at 20 C; IEC 60228 rounds it to 0.004 for its own cables. */
const copperRise = 0.00393;
const iecRise = 0.004;
/** Strands run longer than the wire by their lay: 2 %, as the NEC's table of conductors shows. */
const strandLay = 1.02;

export const gauges = span('gauge', -3, 40, 'AWG');
export const areas = span('area', 4e-4, 200, 'mm2');
export const wireLengths = span('length', 0, 3000, 'ft');
export const wireHeats = span('temperature', -76, 400, 'F');

/** How a conductor is made: single wire, strands, metric flexible or stranded cable, aircraft wire. */
const wireKinds = ['solid', 'stranded', 'flexible', 'cable', 'tinned'] as const;
type WireKind = (typeof wireKinds)[number];

export type WireWanted = {
  readonly gauge?: number | undefined;
  /** mm2; instead of the gauge. */
  readonly area?: number | undefined;
  readonly kind: WireKind;
  /** F */
  readonly temperature: number;
};

/**
 * Diameter of an American Wire Gauge size in inches: 0.005 x 92^((36 - n) / 39), n from -3 (0000)
 * to 40. Source: ASTM B258, from memory. Worked example: wireDiameter(16) is 0.05082.
 */
export function wireDiameter(gauge: number): number {
  return 0.005 * 92 ** ((36 - inSpan(gauge, gauges)) / 39);
}

/** Area of a size in circular mils, (1000 x inches)^2. Worked example: wireCmil(14) is 4106.7. */
export function wireCmil(gauge: number): number {
  return (1000 * wireDiameter(gauge)) ** 2;
}

/** Area of a size in mm2. Worked example: wireArea(10) is 5.2612. */
export function wireArea(gauge: number): number {
  return convert(wireCmil(gauge), 'cmil', 'mm2');
}

/**
 * Ohms per metre of a copper conductor at a temperature. Single wires from resistivity and area;
 * strands 2 % more; metric cables the largest value IEC 60228 allows (between its sizes on a
 * logarithmic scale); aircraft wire the FAA table. Worked example: AWG 12 solid at 68 F has
 * 0.0052107 ohm/m, 1.588 ohm per 1000 ft.
 */
export function ohmsPerMetre(wire: WireWanted): number {
  const celsius = convert(inSpan(wire.temperature, wireHeats), 'F', 'C');
  const rise = wire.kind === 'flexible' || wire.kind === 'cable' ? iecRise : copperRise;
  return coldOhmsPerMetre(wire) * (1 + rise * (celsius - 20));
}

function coldOhmsPerMetre({ gauge, area, kind }: WireWanted): number {
  if (kind === 'tinned') {
    if (gauge === undefined) throw new RangeError('gauge is missing: aircraft wire goes by size.');
    return convert(lookUpLog(tinned, gauge, 'gauge'), 'ohm/1000ft', 'ohm/m');
  }
  const size = areaOf(gauge, area);
  if (kind === 'flexible') return iecOhms(iecFlexible, size) / 1000;
  if (kind === 'cable') return iecOhms(iecStranded, size) / 1000;
  return (copper / size) * (kind === 'stranded' ? strandLay : 1);
}

/** mm2 of a wire told one way; RangeError for both or neither. */
export function areaOf(gauge?: number, area?: number): number {
  if (gauge !== undefined && area === undefined) return wireArea(gauge);
  if (area !== undefined && gauge === undefined) return inSpan(area, areas);
  throw new RangeError('give either gauge or area, not both and not neither.');
}

function iecOhms(table: Table, area: number): number {
  const printed = table.find(([at]) => at === area);
  if (printed !== undefined) return printed[1];
  const [lowest] = table[0] ?? [0];
  const [highest] = table.at(-1) ?? [0];
  inSpan(area, span('area', lowest, highest, 'mm2'));
  const logs = table.map(([at, ohms]) => [Math.log(at), Math.log(ohms)] as const);
  return Math.exp(lookUp(logs, Math.log(area), 'area'));
}

export const wireResistance = makeFigure({
  name: 'wire-resistance',
  family: 'wire',
  about: 'Resistance of a length of copper wire, so that a measured run can be judged.',
  inputs: {
    gauge: optional('wire-gauge', gauges, 'size of the wire (2/0 is -1)'),
    area: optional('area', areas, 'instead of the gauge'),
    length: measured('length', wireLengths, 'all the wire the current goes through', {
      default: 1,
    }),
    temperature: measured('temperature', wireHeats, 'of the wire', { default: 68 }),
    kind: chosen(wireKinds, 'how the conductor is made', 'solid'),
  },
  outputs: {
    result: { unit: 'ohm', about: 'resistance of the length' },
    perLength: { unit: 'ohm/1000ft', about: 'resistance per length' },
    diameter: { unit: 'in', about: 'diameter of a solid wire of that size' },
    circularMils: { unit: 'cmil', about: 'area' },
    area: { unit: 'mm2', about: 'area' },
    toTwenty: { unit: '1', about: 'factor that brings a measured resistance to 20 C' },
  },
  formula: 'R = 0.017241 ohm mm2/m x length / area x (1 + 0.00393 x (C - 20))',
  range: 'AWG 0000 to 40 or 0.0004 to 200 mm2, -76 to 400 F; metric cable 0.5 to 120 mm2',
  source:
    'IACS copper (NBS Handbook 100); ASTM B258, from memory; IEC 60228; FAA AC 43.13-1B table 11-9',
  mark: 'published',
  work: ({ length, ...wire }) => {
    const { gauge, area } = wire;
    const perMetre = ohmsPerMetre(wire);
    const size = wire.kind === 'tinned' ? undefined : areaOf(gauge, area);
    return {
      values: {
        result: perMetre * convert(length, 'ft', 'm'),
        perLength: convert(perMetre, 'ohm/m', 'ohm/1000ft'),
        diameter: gauge === undefined ? undefined : wireDiameter(gauge),
        circularMils: size === undefined ? undefined : convert(size, 'mm2', 'cmil'),
        area: size,
        toTwenty: ohmsPerMetre({ ...wire, temperature: 68 }) / perMetre,
      },
    };
  },
});
