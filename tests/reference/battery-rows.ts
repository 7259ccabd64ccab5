import { lamps } from '../../src/core/trade/figures/lamp-tables.ts';
import { heat, number, text } from './row.ts';
import type { Ask, Family, Row } from './row.ts';

/** The rows' words for vehicles in the family of standing drains. */
const vehicles: Readonly<Record<string, string>> = {
  lim50: 'modern',
  lim35: 'training',
  old: 'points',
};

/** The rows' words for checks of a charging machine: figure, output, and what it must be given. */
const charging: Readonly<Record<string, readonly [string, string]>> = {
  'ripple.a': ['charge-balance', 'rippleLimit'],
  'ripple.c': ['charge-balance', 'rippleStrict'],
  vlo: ['charging-voltage', 'low'],
  vhi: ['charging-voltage', 'high'],
  out: ['charge-balance', 'expected'],
};

const charge = (row: Row): string | undefined => text(row, '%', 'soc_pct');
const battery = (six: boolean): string => (six ? '6' : '12');

function reserve(row: Row, ask: Ask, [word = '']: readonly string[]): number {
  const texts = {
    minutes: text(row, 'min', 'RC_min'),
    battery: battery(word.endsWith('6') && row.unit === 'V'),
  };
  if (word.startsWith('v')) return ask('reserve', texts, 'endVolts');
  return ask('reserve', texts, row.formula.includes('0.6') ? 'twentyHour' : 'result');
}

function load(row: Row, ask: Ask, [word = '']: readonly string[]): number {
  const texts = {
    temperature: heat(row),
    battery: battery(word === 'v6'),
    cca: text(row, 'A', 'CCA', 'CCA_A'),
    capacity: text(row, 'Ah', 'Ah'),
  };
  return ask('load-test', texts, row.unit === 'A' ? 'load' : 'result');
}

function drain(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const vehicle = vehicles[word];
  if (vehicle !== undefined) return ask('standing-drain', { drain: 1, vehicle }, 'limit');
  const milliamps = text(row, 'mA', 'mA', 'I_mA', 'drain_mA');
  if (milliamps === undefined) return undefined;
  const part = number(row, 'usable', 'fraction', 'usable_fraction', 'share', 'f');
  return ask('standing-drain', {
    drain: milliamps,
    capacity: text(row, 'Ah', 'Ah', 'capacity_Ah', 'C_Ah'),
    usable: part === undefined ? undefined : `${part} ratio`,
  });
}

function chargeEnd(row: Row, ask: Ask, [word = '']: readonly string[]): number {
  const output = word === 'coef' ? 'coefficient' : word.startsWith('pred') ? 'predicted' : 'result';
  return ask('charging-voltage', { temperature: heat(row) }, output);
}

/** Gas made; the temperature stands in the id where the row has none. */
function gas(row: Row, ask: Ask, [word = '']: readonly string[]): number {
  const amps = number(row, 'A');
  const texts = {
    overcharge: `${number(row, 'Ah') ?? amps ?? 0} Ah`,
    cells: number(row, 'cells') ?? 1,
    temperature: /^\d+C$/.test(word) ? word : heat(row),
  };
  if (row.unit === '% vol') return ask('hydrogen', texts, 'limit');
  return ask('hydrogen', texts, amps === undefined ? 'result' : 'rate');
}

/** A lamp by the designation in the id: `194`, `1154.major.6.V.`, `6014.high`. */
function lamp(row: Row, ask: Ask, tail: readonly string[]): number | undefined {
  const power = text(row, 'W', 'W');
  if (power !== undefined) return ask('lamp-current', { power, design: text(row, 'V', 'V') });
  const name = tail.filter((word) => !['6', '12', 'V', ''].includes(word)).join('-');
  if (!lamps.has(name)) return undefined;
  return ask('lamp-current', { lamp: name });
}

/** Lamps of UN R37: rated watts at 12 V, largest watts at 13.5 V, or a current. */
function european(row: Row, ask: Ask, tail: readonly string[]): number | undefined {
  const power = text(row, 'W', 'W');
  if (power !== undefined) return ask('lamp-current', { power, design: text(row, 'V', 'V') });
  const [kind, ...rest] = tail;
  const part = rest[0] === 'tail' ? 'P21/5W-tail' : [kind, ...rest].join('-');
  if (!lamps.has(part)) return undefined;
  return ask('lamp-current', { lamp: part }, number(row, 'V') === 13.5 ? 'most' : 'power');
}

/** Rows about batteries, charging and lamps, by family. */
export const batteryRows: readonly Family[] = [
  {
    ids: /^batt\.ocv(?:12|6)\./,
    answer: (row, ask) =>
      ask('rested-voltage', {
        charge: charge(row),
        battery: battery(row.id.startsWith('batt.ocv6.')),
      }),
  },
  {
    ids: /^batt\.sg\./,
    answer: (row, ask) => ask('rested-voltage', { charge: charge(row) }, 'gravity'),
  },
  {
    ids: /^batt\.emf\./,
    answer: (row, ask) => ask('electrolyte', { gravity: number(row, 'sg') }, 'restedVolts'),
  },
  {
    ids: /^batt\.tm\./,
    answer: (row, ask) => ask('rested-voltage', { charge: charge(row) }, 'army'),
  },
  {
    ids: /^batt\.sgcorr\./,
    answer: (row, ask) => ask('hydrometer-correction', { temperature: heat(row) }),
  },
  {
    ids: /^batt\.cca\./,
    answer: (row, ask, [word = '']) =>
      row.unit === 'V'
        ? ask('load-test', { battery: battery(word.endsWith('6')) }, 'coldCrankingEnd')
        : undefined,
  },
  { ids: /^batt\.rc\./, answer: reserve },
  { ids: /^batt\.load\./, answer: load },
  {
    ids: /^batt\.freeze\./,
    answer: (row, ask, [word]) =>
      ask(
        'electrolyte',
        { gravity: number(row, 'sg') },
        word === 'tm' ? 'freezesArmy' : 'freezesGeneral',
      ),
  },
  {
    ids: /^batt\.celldiff$/,
    answer: (_, ask) => ask('cell-spread', { cells: '1.25 1.25' }, 'limit'),
  },
  {
    ids: /^batt\.selfdis\./,
    answer: (row, ask) => ask('self-discharge', { temperature: heat(row) }),
  },
  { ids: /^batt\.chg\./, answer: chargeEnd },
  { ids: /^batt\.par\./, answer: drain },
  {
    ids: /^batt\.crank(?:12|6)$/,
    answer: (row, ask) => ask('cranking-voltage', { battery: battery(row.id.endsWith('k6')) }),
  },
  { ids: /^batt\.h2\./, answer: gas },
  {
    ids: /^load\.alt\./,
    answer: (_, ask, tail) => {
      const [figure, output] = charging[tail.join('.')] ?? [];
      if (figure === undefined) return undefined;
      return ask(figure, figure === 'charge-balance' ? { rating: '1 A' } : {}, output);
    },
  },
  { ids: /^load\.ece\./, answer: european },
  { ids: /^load\.(?=\d)/, answer: lamp },
];
