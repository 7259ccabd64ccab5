import { altitude, number, text } from './row.ts';
import type { Ask, Family, Row } from './row.ts';

/** The rows' words for the outputs of the vacuum figure. */
const vacuumOutputs: Readonly<Record<string, string>> = {
  norm: 'result',
  lo: 'low',
  hi: 'high',
  'snap.lo': 'snapLow',
  'snap.hi': 'snapHigh',
};

/** The rows' words for limits of ignition that no formula gives. */
const ignitionLimits: Readonly<Record<string, string>> = {
  'R.b': 'ballast-coil-ohms',
  'drop.b': 'ballast-drop',
  max: 'advance-highest',
  vactune: 'vacuum-timing-back-off',
};

function vacuum(row: Row, ask: Ask, tail: readonly string[]): number | undefined {
  const output = vacuumOutputs[tail.join('.')];
  if (output !== undefined) return ask('vacuum-at-altitude', {}, output);
  if (tail[0] === 'rule') return vacuumRule(row, ask);
  const seaLevel = text(row, 'inHg', 'V0_inHg');
  if (seaLevel === undefined) return undefined;
  return ask('vacuum-at-altitude', { altitude: altitude(row), seaLevel });
}

/** The rule of thumb: at an altitude, or what a thousand feet take off. */
function vacuumRule(row: Row, ask: Ask): number {
  const sea = text(row, 'inHg', 'V0_inHg');
  const at = (feet?: string): number =>
    ask('vacuum-at-altitude', { seaLevel: sea, altitude: feet }, 'byRule');
  const here = altitude(row);
  return here === undefined ? at('0 ft') - at('1000 ft') : at(here);
}

function compression(row: Row, ask: Ask): number {
  const texts = {
    ratio: number(row, 'CR'),
    exponent: number(row, 'n'),
    air: text(row, 'psi', 'p1_psi'),
    altitude: altitude(row),
  };
  const absolute = row.unit === 'psia' || row.id.startsWith('comp.abs');
  return ask('cranking-compression', texts, absolute ? 'absolute' : 'result');
}

/** A limit moved to an altitude, by the densities that the row's own table gives. */
function moved(row: Row, ask: Ask): number {
  const [there, here] = [number(row, 'rho') ?? 1, number(row, 'rho500') ?? 1];
  const texts = {
    reading: text(row, 'psi', 'p500_psi'),
    altitude: altitude(row),
    density: there / here,
  };
  return ask('compression-at-altitude', texts, 'byDensity');
}

function readings(row: Row): string {
  const list = row.inputs['readings_psi'];
  return Array.isArray(list) ? list.join(' ') : String(number(row, 'max_psi'));
}

function leak(row: Row, ask: Ask, [word = '']: readonly string[]): number | undefined {
  const supply = text(row, 'psi', 'supply_psi', 'p1_psi', 'supply', 'line_psi');
  if (supply !== undefined) {
    return ask('leakage', {
      supply,
      held: text(row, 'psi', 'held_psi', 'p2_psi', 'held', 'cyl_psi'),
    });
  }
  return ['good', 'fair', 'bad'].includes(word) ? ask('leakage', { leak: 0 }, word) : undefined;
}

function dwell(row: Row, ask: Ask): number | undefined {
  const change = text(row, 'deg', 'd_dwell');
  const angle = text(row, 'deg', 'dwell_deg', 'dwell_cam_deg');
  const percent = text(row, '%', 'percent');
  // Where a row names no cylinders the answer does not hang on them; four leave the most room.
  const cylinders = number(row, 'cylinders', 'N') ?? 4;
  const speed = text(row, 'rpm', 'rpm');
  if (change !== undefined) return ask('dwell', { cylinders, percent: 50, change }, 'timingShift');
  if (angle === undefined && percent === undefined) return undefined;
  const output = row.unit === 'ms' ? 'closedTime' : row.unit === '%' ? 'percent' : 'result';
  const open = row.id.startsWith('ign.open.');
  return ask('dwell', { cylinders, dwell: angle, percent, speed }, open ? 'open' : output);
}

/** `ign.dwell8`, `ign.gap46`: usual values, the first digit being a number of cylinders. */
function usual(row: Row, ask: Ask): number {
  const [, word, cylinders = ''] = /^ign\.(dwell|gap)(\d)/.exec(row.id) ?? [];
  return ask('dwell', { cylinders, percent: 50 }, word === 'gap' ? 'gap' : 'usual');
}

function coil(row: Row, ask: Ask): number {
  const texts = {
    volts: text(row, 'V', 'V'),
    coil: text(row, 'ohm', 'Rc', 'R'),
    ballast: text(row, 'ohm', 'Rb'),
    inductance: text(row, 'mH', 'L_mH'),
    time: text(row, 'ms', 't_ms'),
  };
  return ask('coil-current', texts, row.unit === 'ms' ? 'timeConstant' : 'result');
}

function advance(row: Row, ask: Ask): number {
  const output = { 'deg/ms': 'perTime' }[row.unit];
  const interval = number(row, 'cylinders');
  return ask(
    'spark-timing',
    {
      static: text(row, 'deg', 'static'),
      centrifugal: text(row, 'deg', 'cent_dist'),
      vacuum: text(row, 'deg', 'vac_dist'),
      cylinders: interval,
      speed: text(row, 'rpm', 'rpm'),
    },
    interval === undefined ? output : 'interval',
  );
}

/** Rows about air, compression and ignition, by family. */
export const engineRows: readonly Family[] = [
  {
    ids: /^atm\.(?:psia|inhg|kpa)\./,
    answer: (row, ask) => ask('air-pressure', { altitude: altitude(row) }),
  },
  {
    ids: /^atm\.temp\./,
    answer: (row, ask) => ask('air-pressure', { altitude: altitude(row) }, 'temperature'),
  },
  {
    ids: /^atm\.(?:rho|density)\./,
    answer: (row, ask) => ask('air-pressure', { altitude: altitude(row) }, 'densityRatio'),
  },
  { ids: /^atm\.vac\./, answer: vacuum },
  { ids: /^comp\.(?:g|abs|ideal)\./, answer: compression },
  {
    ids: /^comp\.altp\./,
    answer: (row, ask) => ask('air-pressure', { altitude: altitude(row) }, 'pressureRatio'),
  },
  {
    ids: /^comp\.altd\./,
    answer: (row, ask) => ask('air-pressure', { altitude: altitude(row) }, 'densityRatio'),
  },
  { ids: /^comp\.tm\./, answer: moved },
  {
    ids: /^comp\.75/,
    answer: (row, ask) => ask('compression-spread', { readings: readings(row) }, 'floor'),
  },
  {
    ids: /^comp\.avg20/,
    answer: (row, ask) => ask('compression-spread', { readings: readings(row) }, 'floorOfMean'),
  },
  { ids: /^comp\.leak\./, answer: leak },
  {
    ids: /^comp\.disp/,
    answer: (row, ask) =>
      ask('displacement', {
        bore: text(row, 'in', 'bore_in') ?? text(row, 'mm', 'bore_mm'),
        stroke: text(row, 'in', 'stroke_in') ?? text(row, 'mm', 'stroke_mm'),
        cylinders: number(row, 'N', 'cylinders'),
      }),
  },
  { ids: /^ign\.(?:dwell|pct|open|ms)\./, answer: dwell },
  { ids: /^ign\.(?:dwell|gap)\d+$/, answer: usual },
  { ids: /^ign\.(?:interval|total|degms)(?:\.|$)/, answer: advance },
  {
    ids: /^ign\.turns$/,
    answer: (row, ask) =>
      ask('coil-secondary', { kick: text(row, 'V', 'V1'), turns: number(row, 'ratio') }),
  },
  {
    ids: /^ign\.ptI\./,
    answer: (_, ask, [word = '']) => {
      const output = { lo: 'pointsLow', hi: 'pointsHigh' }[word];
      return output === undefined ? undefined : ask('coil-current', {}, output);
    },
  },
  { ids: /^ign\.(?:I\.|it\.|tau$)/, answer: coil },
  {
    ids: /^ign\.(?:R|drop|max|vactune)(?:\.|$)/,
    answer: (row, ask) => {
      const name = ignitionLimits[row.id.slice('ign.'.length)];
      return name === undefined ? undefined : ask('limit', { name });
    },
  },
  {
    ids: /^ign\.arc\./,
    answer: (row, ask) =>
      ask('timing-mark', {
        diameter: text(row, 'in', 'D_in') ?? text(row, 'mm', 'D_mm'),
        angle: text(row, 'deg', 'deg'),
      }),
  },
  {
    ids: /^ign\.deg\.mm/,
    answer: (row, ask) => ask('timing-mark', { diameter: text(row, 'mm', 'D_mm') }, 'perLength'),
  },
];
