import { unit } from './row.ts';
import type { QuantityRow, UnitRow } from './row.ts';

const poundForce = 0.45359237 * 9.80665;
const gallon = 231 * 0.0254 ** 3;
const imperialGallon = 4.54609e-3;

// Conventional mercury and water columns, NIST SP 811; the marked ones are at a temperature.
const pressureUnits: readonly UnitRow[] = [
  unit('kPa', 1e3, 1, 'kilopascal|kilopascals'),
  unit('psi', poundForce / 0.0254 ** 2, 1, 'psig|psia|lb/in2|lbf/in2|lbs|pounds per square inch'),
  unit('bar', 1e5, 2, 'bars'),
  unit('mbar', 100, 0, 'millibar|millibars|mb'),
  unit('hPa', 100, 0, 'hectopascal|hectopascals'),
  unit('Pa', 1, 0, 'pascal|pascals'),
  unit('MPa', 1e6, 3, 'megapascal|megapascals'),
  unit('inHg', 3386.389, 1, 'in hg|inches hg|inch hg|"hg|inches of mercury|inch of mercury'),
  unit('inHg32F', 3386.38, 1, 'inhg (32 f)|inhg at 32 f'),
  unit('inHg60F', 3376.85, 1, 'inhg (60 f)|inhg at 60 f'),
  unit('mmHg', 133.3224, 0, 'mm hg|millimetres of mercury|millimeters of mercury'),
  unit('cmHg', 1333.224, 1, 'cm hg'),
  unit('torr', 101325 / 760, 0),
  unit('inH2O', 249.0889, 1, 'in h2o|inches of water|inch of water|in wg|"h2o'),
  unit('inH2O39F', 249.082, 1, 'inh2o (39.2 f)|inh2o at 39.2 f'),
  unit('inH2O60F', 248.84, 1, 'inh2o (60 f)|inh2o at 60 f'),
  unit('mmH2O', 9.80665, 0, 'mm h2o|millimetres of water'),
  unit('ftH2O', 2989.067, 2, 'ft h2o|feet of water'),
  unit('atm', 101325, 3, 'atmosphere|atmospheres'),
  unit('kgf/cm2', 98066.5, 2, 'kg/cm2|at'),
];

/** Under a vacuum gauge "18 inches" can only be inches of mercury. */
const vacuumUnits: readonly UnitRow[] = pressureUnits.map((row) =>
  row.id === 'inHg' ? { ...row, aliases: [...row.aliases, 'in', 'inch', 'inches', '"'] } : row,
);

/** Pressures, heat, volumes and what flows; base units Pa, K, m3, m3/s and a plain number. */
export const fluid = {
  pressure: { name: 'pressure', everyday: [100, 1e7], units: pressureUnits },
  vacuum: { name: 'vacuum', everyday: [100, 1.1e5], units: vacuumUnits },
  temperature: {
    name: 'temperature',
    everyday: [200, 1500],
    units: [
      { ...unit('F', 5 / 9, 1, '°f|ºf|degf|deg f|degrees f|fahrenheit'), offset: 459.67 },
      { ...unit('C', 1, 1, '°c|ºc|degc|deg c|degrees c|celsius|centigrade'), offset: 273.15 },
      unit('K', 1, 1, 'kelvin|kelvins'),
    ],
  },
  volume: {
    name: 'volume',
    everyday: [1e-7, 0.5],
    units: [
      unit('l', 1e-3, 2, 'L|litre|litres|liter|liters|ltr|dm3'),
      unit('ml', 1e-6, 0, 'mL|cc|cm3|millilitre|millilitres|milliliter|milliliters'),
      unit('m3', 1, 3, 'cubic metres|cubic meters'),
      unit('in3', 0.0254 ** 3, 1, 'cu in|ci|cid|cubic inch|cubic inches'),
      unit('ft3', 0.3048 ** 3, 2, 'cu ft|cubic feet|cubic foot'),
      unit('pt', gallon / 8, 2, 'us pt|pint|pints|us pint|us pints'),
      unit('qt', gallon / 4, 2, 'us qt|quart|quarts|us quart|us quarts'),
      unit('gal', gallon, 2, 'us gal|gallon|gallons|us gallon|us gallons'),
      unit('fl-oz', gallon / 128, 1, 'fl oz|us fl oz|fluid ounce|fluid ounces'),
      unit('imp-pt', imperialGallon / 8, 2, 'imp pt|uk pt|imperial pint|imperial pints'),
      unit('imp-qt', imperialGallon / 4, 2, 'imp qt|uk qt|imperial quart|imperial quarts'),
      unit('imp-gal', imperialGallon, 2, 'imp gal|uk gal|imperial gallon|imperial gallons'),
    ],
  },
  flow: {
    name: 'flow',
    everyday: [1e-8, 1],
    units: [
      unit('l/min', 1e-3 / 60, 2, 'L/min|lpm|litres per minute|liters per minute'),
      unit('ml/min', 1e-6 / 60, 0, 'cc/min|cm3/min'),
      unit('l/s', 1e-3, 2, 'L/s|litres per second|liters per second'),
      unit('l/h', 1e-3 / 3600, 1, 'L/h|lph|litres per hour|liters per hour'),
      unit('ft3/min', 0.3048 ** 3 / 60, 3, 'cfm|cu ft/min'),
      unit('gal/h', gallon / 3600, 1, 'gph|gallons per hour'),
      unit('gal/min', gallon / 60, 2, 'gpm|gallons per minute'),
      unit('pt/min', gallon / 8 / 60, 2, 'pints per minute|us pt/min'),
      unit('imp-pt/min', imperialGallon / 8 / 60, 2, 'imp pt/min|uk pt/min'),
    ],
  },
  economy: {
    name: 'fuel consumption',
    everyday: [1e6, 1e8],
    units: [
      { ...unit('l/100km', 1e-8, 1, 'L/100km|l/100 km'), upsideDown: true },
      unit('mpg', 1609.344 / gallon, 1, 'us mpg|miles per gallon'),
      unit('imp-mpg', 1609.344 / imperialGallon, 1, 'imp mpg|uk mpg'),
      unit('km/l', 1e6, 1, 'km/L'),
    ],
  },
  ratio: {
    name: 'share or ratio',
    everyday: [1e-6, 200],
    units: [
      unit('1', 1, 4, 'ratio|lambda|:1|to 1'),
      unit('%', 1e-2, 1, 'percent|per cent|pct|% vol|%vol|vol %'),
      unit('ppm', 1e-6, 0, 'parts per million|ppm vol'),
    ],
  },
  gravity: {
    name: 'specific gravity',
    everyday: [0.6, 1.5],
    units: [unit('1', 1, 3, 'sg|sp gr|specific gravity'), unit('points', 1e-3, 0, 'point|pts')],
  },
  count: {
    name: 'count',
    everyday: [1, 1e6],
    units: [unit('1', 1, 0, 'off|x|cylinders|cells|lobes|teeth')],
  },
} as const satisfies Readonly<Record<string, QuantityRow>>;
