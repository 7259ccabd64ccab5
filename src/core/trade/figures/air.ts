import { measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { asShown, convert, showReading } from '../units/units.ts';

export const altitudes = span('altitude', -2000, 36_000, 'ft');

/**
 * Standard air pressure in kPa at an altitude in feet:
 * 101.325 x (1 - 0.0065 h / 288.15)^5.25588, h in metres. Valid from -2000 to 36,000 ft.
 * Source: US Standard Atmosphere 1976. Worked example: 5000 ft: 84.307 kPa.
 */
export function airPressure(feet: number): number {
  return 101.325 * (airKelvin(feet) / 288.15) ** 5.25588;
}

/** Standard air density over that at sea level. Worked example: 5000 ft: 0.8617. */
export function densityRatio(feet: number): number {
  return (airPressure(feet) / 101.325) * (288.15 / airKelvin(feet));
}

function airKelvin(feet: number): number {
  return 288.15 - 0.0065 * convert(inSpan(feet, altitudes), 'ft', 'm');
}

export const airPressureFigure = makeFigure({
  name: 'air-pressure',
  family: 'air',
  about: 'Standard air pressure, temperature and density at an altitude.',
  inputs: { altitude: measured('length', altitudes, 'above sea level', { default: 0 }) },
  outputs: {
    result: { unit: 'inHg', about: 'pressure' },
    temperature: { unit: 'F', about: 'standard temperature' },
    pressureRatio: { unit: '1', about: 'pressure over that at sea level' },
    densityRatio: { unit: '1', about: 'density over that at sea level' },
  },
  formula: 'p = 101325 x (1 - 0.0065 h / 288.15)^5.25588 Pa',
  range:
    '-2000 to 36,000 ft; weather reports are reduced to sea level and are not the pressure here',
  source: 'US Standard Atmosphere 1976',
  mark: 'published',
  work: ({ altitude: feet }) => ({
    values: {
      result: convert(airPressure(feet), 'kPa', 'inHg'),
      temperature: convert(airKelvin(feet), 'K', 'F'),
      pressureRatio: airPressure(feet) / 101.325,
      densityRatio: densityRatio(feet),
    },
  }),
});

const vacuums = span('vacuum', 0, 31, 'inHg');
/** Idle vacuum of a sound engine at sea level, inHg: normal, and the edges of the common band. */
const healthy = { normal: 20, low: 17, high: 22, snapLow: 2, snapHigh: 25 } as const;

/**
 * Inches of mercury that a vacuum gauge shows less at an altitude than at sea level for the same
 * pressure in the manifold. Worked example: 5000 ft: 5.03 inHg.
 */
export function vacuumLost(feet: number): number {
  return convert(101.325 - airPressure(feet), 'kPa', 'inHg');
}

/**
 * Vacuum at an altitude of an engine that shows `seaLevel` inHg at sea level: the pressure in the
 * manifold stays, the air outside is less. RangeError when nothing would be left. Worked example:
 * 18 inHg at 5000 ft: 12.98.
 */
export function vacuumAt(feet: number, seaLevel: number): number {
  const left = inSpan(seaLevel, vacuums) - vacuumLost(feet);
  return inSpan(left, span('vacuum here', 0, 31, 'inHg'));
}

/** Below this an engine hardly draws, and what it lacks is not for the thin air to explain. */
const feeble = 5;

/**
 * What a vacuum read at an altitude would be at sea level: the pressure in the manifold stays. The
 * correction fades below 5 inHg and is nothing at 0, where nothing is drawn at any height (common
 * practice). Worked example: 15 inHg at 5200 ft: 20.21 inHg; 0 inHg: 0.
 */
export function vacuumAtSeaLevel(feet: number, reading: number): number {
  const part = Math.min(1, Math.max(0, reading / feeble));
  return reading + part * vacuumLost(feet);
}

export const vacuumAtAltitude = makeFigure({
  name: 'vacuum-at-altitude',
  family: 'air',
  about: 'What a vacuum gauge should show at idle at this altitude.',
  inputs: {
    altitude: measured('length', altitudes, 'above sea level', { default: 0 }),
    seaLevel: measured('vacuum', vacuums, 'expected at sea level', { default: healthy.normal }),
    reading: optional('vacuum', vacuums, 'read here, warm idle'),
  },
  outputs: {
    result: { unit: 'inHg', about: 'expected here' },
    low: { unit: 'inHg', about: 'lower edge of the healthy band here' },
    high: { unit: 'inHg', about: 'upper edge of the healthy band here' },
    byRule: { unit: 'inHg', about: 'expected here by the rule of 1 inHg for 1000 ft' },
    snapLow: { unit: 'inHg', about: 'lowest as the throttle snaps open' },
    snapHigh: { unit: 'inHg', about: 'highest as it snaps shut, here' },
    atSeaLevel: { unit: 'inHg', about: 'what the reading would be at sea level' },
  },
  formula: 'vacuum here = vacuum at sea level - (29.921 inHg - air pressure here)',
  range: '-2000 to 36,000 ft, as long as some vacuum is left',
  source:
    'US Standard Atmosphere 1976; normal, snap and 1 inHg rule US Army OD1001; band common practice',
  mark: 'computed',
  work: ({ altitude: feet, reading: shown, seaLevel }) => {
    const lost = vacuumLost(feet);
    const reading = readable(shown, feet);
    const [low, high] = [healthy.low - lost, healthy.high - lost];
    return {
      values: {
        result: vacuumAt(feet, seaLevel),
        low: Math.max(0, low),
        high: Math.max(0, high),
        byRule: seaLevel - feet / 1000,
        snapLow: healthy.snapLow,
        snapHigh: Math.max(0, healthy.snapHigh - lost),
        atSeaLevel: reading === undefined ? undefined : vacuumAtSeaLevel(feet, reading),
      },
      verdict: judgeVacuum(low, high, reading),
    };
  },
});

/** RangeError for more vacuum than there is air to draw away. */
function readable(reading: number | undefined, feet: number): number | undefined {
  const air = convert(airPressure(feet), 'kPa', 'inHg');
  return reading === undefined
    ? undefined
    : inSpan(reading, { ...vacuums, high: Math.min(vacuums.high, air) });
}

function judgeVacuum(low: number, high: number, reading?: number): string | undefined {
  if (reading === undefined) return undefined;
  if (reading === 0) return `None: is the gauge on, and on the manifold? ${ruleOfThumb}`;
  const band = `${showReading(Math.max(0, low), 'inHg')} to ${showReading(Math.max(0, high), 'inHg')}`;
  const read = asShown(reading, 'inHg');
  const isLow = read < asShown(low, 'inHg');
  const word = isLow ? 'Low' : read > asShown(high, 'inHg') ? 'High' : 'Healthy';
  return `${word}: ${band} is healthy here; some engines sit lower. ${ruleOfThumb}`;
}
