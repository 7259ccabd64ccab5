import { findUnit } from '../../src/core/trade/units/units.ts';
import { quantityNames } from '../../src/core/trade/units/quantities.ts';
import { heat, number, text, unitOf } from './row.ts';
import type { Ask, Family, Row } from './row.ts';

/** The rows' words for units that we write otherwise. */
const unitWords: Readonly<Record<string, string>> = {
  'inhg.conv': 'inHg',
  'inhg.32F': 'inHg32F',
  'inhg.60F': 'inHg60F',
  'inh2o.conv': 'inH2O',
  'inh2o.39F': 'inH2O39F',
  'inh2o.4C': 'inH2O39F',
  'inh2o.60F': 'inH2O60F',
  uspint: 'pt',
  usqt: 'qt',
  usquart: 'qt',
  usgal: 'gal',
  imppint: 'imp-pt',
  impgal: 'imp-gal',
  impqt: 'imp-qt',
  ftlbf: 'ft-lb',
  inlbf: 'in-lb',
  mphms: 'mph',
  mpgus: 'mpg',
  mpguk: 'imp-mpg',
  kgfcm2: 'kgf/cm2',
  usfloz: 'fl-oz',
  ftlb: 'ft-lb',
  inlb: 'in-lb',
  inch2: 'in2',
  inch3: 'in3',
};

/** The rows' words for brakes and safety limits. */
const brakes: Readonly<Record<string, string>> = {
  svc: 'service',
  pk: 'parking',
  pk1: 'parking-single-line',
  new: 'service-2010',
};
const dangers: Readonly<Record<string, string>> = {
  'co.osha': 'garage-co-8h',
  'co.rel': 'garage-co-8h-strict',
  'co.ceil': 'garage-co-ceiling',
  'co.idlh': 'garage-co-danger',
  'lel.petrol': 'fuel-vapor-burns',
  'lel.petrol.lo': 'fuel-vapor-burns-strict',
  flash: 'fuel-flash',
};

function isUnit(word: string): boolean {
  return quantityNames.some((name) => findUnit(name, word) !== undefined);
}

/** `psi` or `d.psi.inhg`: the unit of the value is in the id, the wanted one is the row's. */
function unit(row: Row, ask: Ask, tail: readonly string[]): number | undefined {
  const words = tail[0] === 'd' ? tail.slice(1, 2) : tail;
  const from = unitWords[words.join('.')] ?? words.join('.');
  if (!isUnit(from) || !isUnit(unitOf(row))) return undefined;
  return ask('convert', { value: number(row, 'value') ?? 1, from, to: unitOf(row) });
}

/** Numbers of a sentence such as `indicated 60 and tyre grows 26 to 27 in`. */
function numbersIn(sentence: string): readonly string[] {
  return sentence.match(/\d+(?:\.\d+)?/g) ?? [];
}

function road(row: Row, ask: Ask): number | undefined {
  const [tire] = /\d{3}\/\d{2}R\d{2}/.exec(row.quantity) ?? [];
  if (tire !== undefined)
    return ask('tire-size', { tire }, row.unit === '1/mile' ? 'turns' : 'result');
  const diameter = text(row, 'in', 'D_in');
  if (diameter === undefined) return undefined;
  const texts = { diameter, speed: text(row, 'rpm', 'rpm'), ratio: number(row, 'ratio') };
  const mph = number(row, 'mph', 'speed_mph');
  // Engine speed at a road speed: by how much faster than 1000 rpm it turns.
  if (mph !== undefined) return (1000 * mph) / ask('road-speed', { ...texts, speed: '1000 rpm' });
  return ask('road-speed', texts, row.unit === '1/mile' ? 'turns' : 'result');
}

function brake(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const effort = text(row, 'kgf', 'F_kgf');
  if (effort !== undefined) return ask('brake-effort', { effort, weight: text(row, 'kg', 'W_kg') });
  const name = brakes[word];
  if (name === undefined) return undefined;
  return ask('brake-effort', { effort: 500, weight: 1000, brake: name }, 'least');
}

function danger(row: Row, ask: Ask): number | undefined {
  const name = dangers[row.id.slice('safe.'.length)];
  return name === undefined ? undefined : ask('limit', { name });
}

/** Time in a closed garage; the level stands in the sentence only. */
function garage(row: Row, ask: Ask): number {
  const [, level] = /to (\d+) ppm/.exec(row.quantity) ?? [];
  return ask('garage-co', {
    room: text(row, 'm3', 'V_m3'),
    flow: text(row, 'l/s', 'Q_Lps'),
    co: text(row, 'ratio', 'CO'),
    target: level === undefined ? undefined : `${level} ppm`,
  });
}

/** Rows about units, the road and safety, by family. */
export const otherRows: readonly Family[] = [
  {
    ids: /^unit\.(?:f2c|c2f)\./,
    answer: (row, ask) => ask('convert', { value: heat(row), to: unitOf(row) }),
  },
  { ids: /^unit\./, answer: unit },
  { ids: /^road\.(?:od|rpm)/, answer: road },
  {
    ids: /^road\.spd/,
    answer: (row, ask) => {
      const [indicated, original, fitted] = numbersIn(row.quantity);
      return ask('speed-error', { indicated, original, fitted });
    },
  },
  { ids: /^road\.brk\./, answer: brake },
  {
    ids: /^road\.bhp/,
    answer: (row, ask) =>
      ask('engine-power', { torque: text(row, 'ft-lb', 'T'), speed: text(row, 'rpm', 'rpm') }),
  },
  {
    ids: /^road\.torque/,
    answer: (row, ask) =>
      ask('convert', { value: numbersIn(row.quantity)[0], from: 'ft-lb', to: unitOf(row) }),
  },
  { ids: /^safe\.co\.room/, answer: garage },
  { ids: /^safe\./, answer: danger },
];
