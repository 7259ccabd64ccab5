import { unit } from './row.ts';
import type { QuantityRow } from './row.ts';

/** Electrical quantities; base units volt, ampere, ohm, watt, ampere-hour, farad, henry, joule. */
export const electrical = {
  voltage: {
    name: 'voltage',
    everyday: [0.001, 500],
    units: [
      unit('V', 1, 2, 'volt|volts|vdc|v dc'),
      unit('mV', 1e-3, 0, 'millivolt|millivolts'),
      unit('kV', 1e3, 1, 'kilovolt|kilovolts'),
    ],
  },
  current: {
    name: 'current',
    everyday: [0.001, 1000],
    units: [
      unit('A', 1, 2, 'amp|amps|ampere|amperes'),
      unit('mA', 1e-3, 0, 'milliamp|milliamps|milliampere|milliamperes'),
      unit('uA', 1e-6, 0, 'microamp|microamps'),
      unit('kA', 1e3, 2, 'kiloamp|kiloamps|kiloampere|kiloamperes'),
    ],
  },
  resistance: {
    name: 'resistance',
    everyday: [1e-4, 1e5],
    units: [
      unit('ohm', 1, 2, 'ohms|r'),
      unit('mohm', 1e-3, 2, 'milliohm|milliohms'),
      unit('kohm', 1e3, 2, 'kilohm|kilohms|kiloohm|k'),
      unit('Mohm', 1e6, 2, 'megohm|megohms|megaohm'),
    ],
  },
  'line-resistance': {
    name: 'resistance per length',
    everyday: [1e-5, 1],
    units: [
      unit('ohm/1000ft', 1 / 304.8, 4, 'ohm per 1000 ft|ohm/kft|ohm/1000 ft'),
      unit('ohm/km', 1e-3, 3, 'ohm per km|mohm/m'),
      unit('ohm/ft', 1 / 0.3048, 6, 'ohm per ft'),
      unit('ohm/m', 1, 5, 'ohm per m'),
    ],
  },
  power: {
    name: 'power',
    everyday: [0.1, 5e5],
    units: [
      unit('W', 1, 1, 'watt|watts'),
      unit('mW', 1e-3, 0, 'milliwatt|milliwatts'),
      unit('kW', 1e3, 2, 'kilowatt|kilowatts'),
      // 550 ft lbf/s and 75 kgf m/s, both exact.
      unit('hp', 550 * 0.3048 * 0.45359237 * 9.80665, 1, 'bhp|horsepower'),
      unit('PS', 75 * 9.80665, 1, 'metric hp|metric horsepower|cv'),
    ],
  },
  energy: {
    name: 'energy',
    everyday: [1e-3, 1e9],
    units: [
      unit('J', 1, 1, 'joule|joules'),
      unit('mJ', 1e-3, 1, 'millijoule|millijoules'),
      unit('kJ', 1e3, 2, 'kilojoule|kilojoules'),
      unit('Wh', 3600, 1, 'watt hour|watt hours|watt-hour|watt-hours'),
      unit('kWh', 3.6e6, 3, 'kilowatt hour|kilowatt hours'),
      unit('BTU', 1055.05585262, 2, 'btu(it)'),
    ],
  },
  charge: {
    name: 'electric charge',
    everyday: [0.01, 1000],
    units: [
      unit('Ah', 1, 1, 'a h|a-h|amp hour|amp hours|amp-hour|amp-hours|ampere hours'),
      unit('mAh', 1e-3, 0, 'milliamp hours|milliamp-hours'),
      unit('C', 1 / 3600, 0, 'coulomb|coulombs|as|amp second|amp seconds'),
    ],
  },
  capacitance: {
    name: 'capacitance',
    everyday: [1e-10, 1],
    units: [
      unit('uF', 1e-6, 3, 'mfd|microfarad|microfarads'),
      unit('nF', 1e-9, 1, 'nanofarad|nanofarads'),
      unit('pF', 1e-12, 0, 'picofarad|picofarads'),
      unit('F', 1, 3, 'farad|farads'),
    ],
  },
  inductance: {
    name: 'inductance',
    everyday: [1e-6, 1],
    units: [unit('mH', 1e-3, 2, 'millihenry|millihenries'), unit('H', 1, 4, 'henry|henries')],
  },
  'wire-gauge': {
    name: 'wire gauge',
    everyday: [-3, 40],
    units: [unit('AWG', 1, 0, 'ga|gauge|awg no|b&s')],
  },
} as const satisfies Readonly<Record<string, QuantityRow>>;
