import { gauge, heat, number, text } from './row.ts';
import type { Ask, Family, Row } from './row.ts';

/** The rows' words for kinds of circuit. */
const circuits: Readonly<Record<string, string>> = {
  crank100: 'starter',
  pos: 'battery-cable',
  faa14c: 'continuous',
  faa14i: 'intermittent',
  abyc3: 'critical',
  abyc10: 'other',
  conn: 'joint',
  gnd: 'ground',
  'chg+': 'charging',
  hdl: 'headlamp',
};

const sizeOutputs: Readonly<Record<string, string>> = {
  d: 'diameter',
  r20: 'perLength',
  cmil: 'circularMils',
  mm2: 'area',
};

const conductorKinds: Readonly<Record<string, string>> = { solid: 'solid', str: 'stranded' };
const iecKinds: Readonly<Record<string, string>> = { c5: 'flexible', c2: 'cable' };

function perLength(row: Row): string | undefined {
  return text(row, 'ohm/ft', 'r_ohm_per_ft') ?? text(row, 'ohm/1000ft', 'r_ohm_per_1000ft');
}

function iec(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const area = text(row, 'mm2', 'area_mm2');
  const kind = iecKinds[word];
  if (kind !== undefined) return ask('wire-resistance', { area, kind }, 'perLength');
  return ask(
    'wire-resistance',
    { area: '1 mm2', kind: 'flexible', temperature: heat(row) },
    'toTwenty',
  );
}

function melting(row: Row, ask: Ask): number {
  const size = { area: text(row, 'cmil', 'A_cmil'), gauge: gauge(row), ambient: heat(row) };
  const current = text(row, 'A', 'I_A');
  return current === undefined
    ? ask('melting-current', { ...size, time: text(row, 's', 't_s') })
    : ask('melting-time', { ...size, current });
}

function preece(row: Row, ask: Ask): number {
  const inches = number(row, 'd_in');
  if (inches === undefined) return ask('melting-size', { current: text(row, 'A', 'I_A') });
  return ask('melting-current', { area: `${(1000 * inches) ** 2} cmil` }, 'steady');
}

function joint(row: Row, ask: Ask): number {
  const output = { W: 'result', V: 'drop', ohm: 'resistance' }[row.unit];
  return ask(
    'joint-heat',
    {
      current: text(row, 'A', 'I_A', 'I'),
      drop: text(row, 'V', 'V'),
      resistance: text(row, 'ohm', 'R_ohm', 'R'),
    },
    output,
  );
}

/** Drop limits; one is told for each 100 A, two as a share of the volts. */
function dropLimit(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const circuit = circuits[word];
  if (circuit === undefined) return undefined;
  const texts = { current: 100, resistance: 0, circuit, volts: number(row, 'system_V') };
  return ask('voltage-drop', texts, row.unit === '1' ? 'limitShare' : 'limit');
}

/** Rows about wires and joints, by family. */
export const wireRows: readonly Family[] = [
  {
    ids: /^cond\.rho20$/,
    answer: (row, ask) =>
      ask('wire-resistance', { area: '1 mm2', length: '1 m', temperature: heat(row) }),
  },
  {
    // The coefficient is what one kelvin more does.
    ids: /^cond\.alpha20$/,
    answer: (row, ask) => {
      const ohms = (celsius: number): number =>
        ask('wire-resistance', { area: '1 mm2', length: '1 m', temperature: `${celsius} C` });
      const celsius = number(row, 'temperature_C') ?? Number.NaN;
      return ohms(celsius + 1) / ohms(celsius) - 1;
    },
  },
  {
    ids: /^cond\.k\./,
    answer: (_, ask) => ask('wire-resistance', { area: '1 cmil', length: '1 ft' }),
  },
  {
    ids: /^cond\.awg\./,
    answer: (row, ask, [word = '']) =>
      ask('wire-resistance', { gauge: gauge(row), temperature: heat(row) }, sizeOutputs[word]),
  },
  {
    ids: /^cond\.nec8\./,
    answer: (row, ask, [word = '']) =>
      ask(
        'wire-resistance',
        { gauge: gauge(row), temperature: heat(row), kind: conductorKinds[word] },
        'perLength',
      ),
  },
  { ids: /^cond\.iec\./, answer: iec },
  {
    ids: /^cond\.faa\.tin\./,
    answer: (row, ask) =>
      ask('wire-resistance', { gauge: gauge(row), kind: 'tinned' }, 'perLength'),
  },
  {
    ids: /^cond\.vd\./,
    answer: (row, ask) =>
      ask('voltage-drop', {
        perLength: perLength(row),
        length: text(row, 'ft', 'length_ft'),
        current: text(row, 'A', 'current_A', 'I_A'),
        runs: /2\s*\*/.test(row.formula) ? 2 : 1,
      }),
  },
  {
    // `105` outside the engine space, `105e` in it.
    ids: /^cond\.cg\./,
    answer: (row, ask, [word = '']) =>
      ask('wire-current', {
        gauge: gauge(row),
        insulation: word.replace('e', ''),
        place: word.endsWith('e') ? 'engine-space' : 'open',
      }),
  },
  { ids: /^cond\.preece\./, answer: preece },
  { ids: /^cond\.onderdonk\./, answer: melting },
  {
    ids: /^cond\.link\./,
    answer: (row, ask) => {
      const steps = number(row, 'steps');
      return steps === undefined
        ? ask('fuse-link', { gauge: gauge(row) })
        : ask('fuse-link', { gauge: 10, steps }, 'areaRatio');
    },
  },
  { ids: /^cond\.bad\./, answer: joint },
  {
    ids: /^cond\.cable\./,
    answer: (row, ask) =>
      ask('voltage-drop', {
        gauge: gauge(row),
        length: text(row, 'ft', 'length_ft'),
        current: text(row, 'A', 'I_A'),
        temperature: heat(row),
      }),
  },
  { ids: /^cond\.limit\./, answer: dropLimit },
];
