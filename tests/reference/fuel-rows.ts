import { altitude, heat, number, text } from './row.ts';
import type { Ask, Family, Row, Texts } from './row.ts';

function exhaust(row: Row): Readonly<Record<string, number | string | undefined>> {
  return {
    co: number(row, 'co'),
    co2: number(row, 'co2'),
    o2: number(row, 'o2'),
    hc: text(row, 'ppm', 'hc'),
    no: text(row, 'ppm', 'no', 'nox'),
  };
}

/** A gas by letter, then what is different: `a`, `a12` (HC x 12), `aR83`, `a98`. */
function lambda(row: Row, ask: Ask, [word = '']: readonly string[]): number {
  const fuel = word.includes('R83') ? 'e5' : word.includes('98') ? 'directive' : undefined;
  return ask('lambda', { ...exhaust(row), fuel, hcFactor: word.endsWith('12') ? '12' : undefined });
}

function mixture(row: Row, ask: Ask): number {
  const output = row.id.startsWith('fuel.co2.') ? 'co2' : 'co';
  return ask('mixture', { lambda: number(row, 'lambda'), hydrogen: number(row, 'HC') }, output);
}

/**
 * `uk1` before and `uk2` after the step of 1986, `lu` and `eu` likewise (one directive); `us` the
 * federal rule; `co70` the state rule for 1970 and so on, `cohc` its hydrocarbons; `dil` dilution.
 */
function idle(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  if (word === 'dil') return ask('idle-co', {}, 'dilution');
  const [, rule = '', rest = ''] = /^(uk|lu|eu|us|co)(\w+)$/.exec(word) ?? [];
  const asked = idleRule(rule, rest);
  if (asked === undefined) return undefined;
  return ask('idle-co', asked, row.unit.startsWith('ppm') ? 'hc' : 'result');
}

function idleRule(rule: string, rest: string): Texts | undefined {
  if (rule === '') return undefined;
  if (rule === 'us') return { rule: 'us', year: 1985 };
  if (rule === 'co') return stateRule(rest === 'hc' ? 70 : Number(rest));
  return { rule: rule === 'uk' ? 'uk' : 'eu', year: rest === '1' ? 1980 : 1987 };
}

/** The state's list was read up to 1977 only. */
function stateRule(year: number): Texts | undefined {
  return year <= 77 ? { rule: 'us-state', year: 1900 + year } : undefined;
}

function pump(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  if (word === 'lo') return ask('fuel-pump', {}, 'low');
  if (word === 'hi') return ask('fuel-pump', {}, 'high');
  if (word === 'vol') {
    const pint = /imp/i.test(row.quantity) ? 'imp-pt' : 'pt';
    return ask('fuel-pump', { volume: text(row, pint, 'pint'), time: text(row, 's', 'time_s') });
  }
  if (word !== 'head') return undefined;
  return ask('fuel-head', { height: text(row, 'in', 'height_in'), gravity: number(row, 'sg') });
}

function coolant(row: Row, ask: Ask, tail: readonly string[]): number | undefined {
  const share = number(row, 'vol_glycol');
  // A published figure tells its cap in the id only: `pub15` is 50/50 under 15 psi.
  const [, named] = /^pub(\d+)$/.exec(tail[0] ?? '') ?? [];
  const half = row.id.startsWith('cool.gly.') ? 0.5 : undefined;
  return ask('boiling-point', {
    cap: text(row, 'psi', 'cap_psi') ?? (named === undefined ? undefined : `${named} psi`),
    altitude: altitude(row),
    glycol: share === undefined && half === undefined ? undefined : `${share ?? half} ratio`,
    pressure: text(row, 'psi', 'p_psia'),
  });
}

/** `rule3` the rule of thumb, `rule3.true15` the true mean rise under a cap of 15 psi. */
function rise(_: Row, ask: Ask, tail: readonly string[]): number {
  const [, cap] = /^true(\d+)$/.exec(tail[0] ?? '') ?? [];
  return cap === undefined
    ? ask('boiling-point', {}, 'rule')
    : ask('boiling-point', { cap: `${cap} psi` }, 'rise');
}

function saturation(row: Row, ask: Ask): number {
  const pressure = text(row, 'MPa', 'p_MPa');
  if (pressure !== undefined) return ask('boiling-point', { pressure });
  return ask('steam-pressure', { temperature: heat(row) });
}

function capLimit(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  if (row.id === 'cool.capvac') return ask('limit', { name: 'cap-vacuum' });
  const end = { lo: 'low', hi: 'high' }[word];
  return end === undefined ? undefined : ask('limit', { name: `cap-7-${end}` });
}

function thermostat(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const output = { full: 'result', '160': 'summer', '': 'opens' }[word];
  if (output === undefined) return undefined;
  return ask('thermostat', { opens: text(row, 'F', 'start_F') }, output);
}

/** Rows about fuel, mixture and cooling, by family. */
export const fuelRows: readonly Family[] = [
  {
    ids: /^fuel\.afr\./,
    answer: (row, ask, [word]) =>
      ask(
        'mixture',
        { hydrogen: number(row, 'HC'), oxygen: number(row, 'OC') },
        word === 'trade' ? 'trade' : 'stoichiometric',
      ),
  },
  { ids: /^fuel\.lambda\./, answer: lambda },
  { ids: /^fuel\.co2?\./, answer: mixture },
  {
    ids: /^fuel\.roundtrip\./,
    answer: (row, ask) => ask('lambda', { ...exhaust(row), fuel: 'plain' }),
  },
  {
    ids: /^fuel\.afrl\./,
    answer: (row, ask) => ask('mixture', { lambda: number(row, 'lambda') }, 'airFuel'),
  },
  { ids: /^fuel\.limit\./, answer: idle },
  {
    ids: /^fuel\.tvp\./,
    answer: (row, ask) =>
      ask('fuel-vapor', { reid: text(row, 'psi', 'RVP_psi'), temperature: heat(row) }),
  },
  {
    ids: /^fuel\.bub\./,
    answer: (row, ask) =>
      ask('fuel-boiling', { reid: text(row, 'psi', 'RVP_psi'), altitude: altitude(row) }),
  },
  { ids: /^fuel\.pump\./, answer: pump },
  {
    ids: /^fuel\.needle$/,
    answer: (row, ask) =>
      ask('needle-force', {
        diameter: text(row, 'in', 'd_in'),
        pressure: text(row, 'psi', 'p_psi'),
      }),
  },
  { ids: /^cool\.if97\./, answer: saturation },
  { ids: /^cool\.(?:sat|cap|gly)\./, answer: coolant },
  {
    ids: /^cool\.xw/,
    answer: (row, ask) =>
      ask('boiling-point', { glycol: text(row, 'ratio', 'vol_glycol') }, 'waterFraction'),
  },
  { ids: /^cool\.rule3/, answer: rise },
  { ids: /^cool\.cap(?:7|vac)/, answer: capLimit },
  { ids: /^cool\.stat/, answer: thermostat },
  {
    ids: /^cool\.freeze\./,
    answer: (row, ask) => ask('coolant-freeze', { glycol: text(row, 'ratio', 'vol_glycol') }),
  },
];
