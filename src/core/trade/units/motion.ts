import { coarse, unit } from './row.ts';
import type { QuantityRow } from './row.ts';

const pound = 0.45359237;
const poundForce = pound * 9.80665;
const mile = 1609.344;
const turn = 2 * Math.PI;

/** Sizes, movement, force and time; base units m, m2, kg, m/s, rad/s, rad, s, N, N m, Hz. */
export const motion = {
  length: {
    name: 'length',
    everyday: [1e-5, 1e6],
    units: [
      unit('mm', 1e-3, 2, 'millimetre|millimetres|millimeter|millimeters'),
      unit('cm', 1e-2, 2, 'centimetre|centimetres|centimeter|centimeters'),
      coarse(unit('m', 1, 2, 'metre|metres|meter|meters')),
      coarse(unit('km', 1e3, 2, 'kilometre|kilometres|kilometer|kilometers')),
      unit('in', 0.0254, 3, 'inch|inches|"|″'),
      coarse(unit('ft', 0.3048, 2, "foot|feet|'|′")),
      unit('mil', 2.54e-5, 1, 'mils|thou'),
      coarse(unit('yd', 0.9144, 2, 'yard|yards')),
      coarse(unit('mi', mile, 2, 'mile|miles')),
    ],
  },
  area: {
    name: 'area',
    everyday: [1e-9, 1e3],
    units: [
      unit('mm2', 1e-6, 3, 'sq mm|square mm|qmm'),
      unit('cm2', 1e-4, 2, 'sq cm|square cm'),
      unit('m2', 1, 3, 'sq m|square metres|square meters'),
      unit('in2', 0.0254 ** 2, 4, 'sq in|square inch|square inches'),
      unit('ft2', 0.3048 ** 2, 2, 'sq ft|square feet'),
      unit('cmil', (Math.PI / 4) * 2.54e-5 ** 2, 0, 'cma|circular mil|circular mils'),
    ],
  },
  mass: {
    name: 'mass',
    everyday: [1e-4, 1e5],
    units: [
      unit('kg', 1, 2, 'kilogram|kilograms|kilo|kilos'),
      unit('g', 1e-3, 1, 'gram|grams'),
      unit('lb', pound, 2, 'lbs|pound|pounds'),
      unit('oz', pound / 16, 1, 'ounce|ounces'),
      unit('t', 1e3, 3, 'tonne|tonnes'),
      unit('ton', pound * 2000, 3, 'short ton|short tons|us ton'),
    ],
  },
  force: {
    name: 'force',
    everyday: [0.01, 1e6],
    units: [
      unit('N', 1, 2, 'newton|newtons'),
      unit('kN', 1e3, 3, 'kilonewton|kilonewtons'),
      unit('lbf', poundForce, 3, 'lb|lbs|pound-force|pounds-force'),
      unit('kgf', 9.80665, 2, 'kg|kilogram-force|kp'),
      unit('ozf', poundForce / 16, 1, 'oz|ounce-force'),
    ],
  },
  torque: {
    name: 'torque',
    everyday: [0.01, 1e5],
    units: [
      unit('Nm', 1, 1, 'n m|n-m|n·m|newton metre|newton metres|newton meters'),
      unit('ft-lb', poundForce * 0.3048, 1, 'ft lb|ft lbs|lb-ft|lb ft|lbf ft|ft lbf|ft-lbf|lbf-ft'),
      unit('in-lb', poundForce * 0.0254, 1, 'in lb|in lbs|lb-in|lb in|lbf in|in lbf|in-lbf|lbf-in'),
      unit('kgf-m', 9.80665, 2, 'kgf m|kg m|kg-m|mkp'),
    ],
  },
  speed: {
    name: 'speed',
    everyday: [0.1, 200],
    units: [
      unit('km/h', 1 / 3.6, 1, 'kph|kmh|km/hr|kilometres per hour|kilometers per hour'),
      unit('mph', mile / 3600, 1, 'mi/h|miles per hour'),
      unit('m/s', 1, 2, 'metres per second|meters per second'),
      unit('ft/s', 0.3048, 2, 'fps|feet per second'),
    ],
  },
  rotation: {
    name: 'speed of rotation',
    // Slower than 30 rpm or faster than 20,000 rpm no engine part is set.
    everyday: [(30 * turn) / 60, (20_000 * turn) / 60],
    units: [
      coarse(unit('rpm', turn / 60, 0, 'r/min|rev/min|revs|1/min')),
      unit('rad/s', 1, 2, 'radians per second'),
      unit('rev/s', turn, 2, 'rps|r/s'),
    ],
  },
  angle: {
    name: 'angle',
    everyday: [1e-3, turn * 2],
    units: [
      unit('deg', turn / 360, 1, '°|º|degree|degrees|crank deg|cam deg'),
      unit('rad', 1, 4, 'radian|radians'),
      unit('turn', turn, 3, 'turns|rev|revolution|revolutions'),
    ],
  },
  time: {
    name: 'time',
    everyday: [1e-5, 3e8],
    units: [
      unit('s', 1, 2, 'sec|secs|second|seconds'),
      unit('ms', 1e-3, 2, 'msec|millisecond|milliseconds'),
      unit('us', 1e-6, 0, 'microsecond|microseconds'),
      unit('min', 60, 1, 'mins|minute|minutes'),
      unit('h', 3600, 1, 'hr|hrs|hour|hours'),
      unit('day', 86_400, 1, 'd|days'),
      unit('week', 604_800, 1, 'weeks|wk'),
    ],
  },
  frequency: {
    name: 'frequency',
    everyday: [0.1, 1e6],
    units: [unit('Hz', 1, 1, 'hertz|c/s'), unit('kHz', 1e3, 2, 'kilohertz')],
  },
} as const satisfies Readonly<Record<string, QuantityRow>>;
