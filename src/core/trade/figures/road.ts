import { chosen, generalTable, measured, namesOf } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { convert, showReading } from '../units/units.ts';

const speeds = span('speed', 0, 20_000, 'rpm');
const ratios = span('ratio', 0.2, 50, '');
const tires = span('diameter', 10, 60, 'in');
const roadSpeeds = span('speed', 0, 200, 'mph');

/**
 * Road speed in mph from engine rpm, overall ratio and tire diameter in inches:
 * rpm x pi x D x 60 / (ratio x 63360). Worked example: 2500 rpm, 3.73, 26 in: 51.84 mph.
 */
export function roadSpeedOf(rpm: number, ratio: number, diameter: number): number {
  const inchesAnHour = inSpan(rpm, speeds) * Math.PI * inSpan(diameter, tires) * 60;
  return inchesAnHour / (inSpan(ratio, ratios) * 63_360);
}

export const roadSpeed = makeFigure({
  name: 'road-speed',
  family: 'road',
  about: 'Road speed from engine speed, gearing and tire.',
  inputs: {
    speed: measured('rotation', speeds, 'of the engine', { default: 1000 }),
    ratio: measured('ratio', ratios, 'engine turns for one wheel turn', { default: 1 }),
    diameter: measured('length', tires, 'of the tire, loaded is a little less'),
  },
  outputs: {
    result: { unit: 'mph', about: 'road speed' },
    turns: { unit: '1/mile', about: 'wheel turns a mile' },
  },
  formula: 'mph = rpm x pi x D x 60 / (ratio x 63360)',
  range: '0 to 20,000 rpm, ratio 0.2 to 50, 10 to 60 in',
  source: 'geometry',
  mark: 'computed',
  work: ({ diameter, speed, ratio }) => ({
    values: { result: roadSpeedOf(speed, ratio, diameter), turns: 63_360 / (Math.PI * diameter) },
  }),
});

export const speedError = makeFigure({
  name: 'speed-error',
  family: 'road',
  about: 'True speed when the tires are not those the speedometer was made for.',
  inputs: {
    indicated: measured('speed', roadSpeeds, 'on the speedometer'),
    original: measured('length', tires, 'diameter of the original tire'),
    fitted: measured('length', tires, 'diameter of the tire now fitted'),
  },
  outputs: { result: { unit: 'mph', about: 'true speed' } },
  formula: 'indicated x fitted / original',
  range: '0 to 200 mph, 10 to 60 in',
  source: 'geometry',
  mark: 'computed',
  work: ({ indicated, fitted, original }) => ({
    values: { result: (indicated * fitted) / original },
  }),
});

const efforts = span('effort', 1, 120, '%');
const gravity = 9.80665;

/**
 * Stopping distance in feet: reaction + v^2 / (2 x efficiency x g). Valid for 0 to 200 mph, 1 to
 * 120 % braking efficiency. Source: mechanics. Worked example: 30 mph, 50 %, 1 s: 104.2 ft.
 */
export function stoppingDistance(mph: number, efficiency: number, reaction: number): number {
  const speed = convert(inSpan(mph, roadSpeeds), 'mph', 'm/s');
  const rate = (inSpan(efficiency, efforts) / 100) * gravity;
  const thinking = speed * inSpan(reaction, span('reaction', 0, 10, 's'));
  return convert(thinking + speed ** 2 / (2 * rate), 'm', 'ft');
}

export const stopping = makeFigure({
  name: 'stopping',
  family: 'road',
  about: 'Stopping distance at a braking efficiency.',
  inputs: {
    speed: measured('speed', roadSpeeds, 'before braking'),
    efficiency: measured('ratio', efforts, 'braking efficiency', { default: 50 }),
    reaction: measured('time', span('reaction', 0, 10, 's'), 'before the pedal', { default: 1 }),
  },
  outputs: {
    result: { unit: 'ft', about: 'in all' },
    braking: { unit: 'ft', about: 'while braking' },
  },
  formula: 'v x reaction + v^2 / (2 x efficiency x 9.80665 m/s2)',
  range: '0 to 200 mph, 1 to 120 %',
  source: 'mechanics',
  mark: 'computed',
  work: ({ speed: mph, efficiency: part, reaction }) => ({
    values: {
      result: stoppingDistance(mph, part, reaction),
      braking: stoppingDistance(mph, part, 0),
    },
  }),
});

/** Least braking efficiency in percent: UK test rules as a testing page and a notice print them. */
const brakeMinima = {
  service: 50,
  'service-2010': 58,
  parking: 16,
  'parking-single-line': 25,
} as const;

export const brakeEffort = makeFigure({
  name: 'brake-effort',
  family: 'road',
  about: 'Braking efficiency from roller-tester effort and weight.',
  inputs: {
    effort: measured('force', span('effort', 0, 20_000, 'kgf'), 'sum of the wheels'),
    weight: measured('mass', span('weight', 50, 20_000, 'kg'), 'of the vehicle'),
    brake: chosen(namesOf(brakeMinima), 'which brake', 'service'),
  },
  outputs: {
    result: { unit: '%', about: 'efficiency' },
    least: { unit: '%', about: 'least allowed' },
  },
  formula: '100 x effort / weight',
  range: '0 to 20,000 kgf, 50 to 20,000 kg',
  source: 'UK roadworthiness test rules, read in copies',
  mark: 'published',
  work: ({ effort, weight, brake }) => {
    const found = (100 * effort) / weight;
    const least = brakeMinima[brake];
    const word = found < least ? 'Below' : 'At or above';
    return {
      values: { result: found, least },
      verdict: `${word} ${showReading(least, '%')}. Local rules come first. ${generalTable}`,
    };
  },
});

const torques = span('torque', 0, 5000, 'ft-lb');

/** Horsepower from torque in ft-lb and rpm. Worked example: 150 ft-lb at 3500 rpm: 99.96 hp. */
export function enginePowerOf(torque: number, rpm: number): number {
  const radians = convert(inSpan(rpm, speeds), 'rpm', 'rad/s');
  return convert(convert(inSpan(torque, torques), 'ft-lb', 'Nm') * radians, 'W', 'hp');
}

export const enginePower = makeFigure({
  name: 'engine-power',
  family: 'road',
  about: 'Power from torque and engine speed.',
  inputs: {
    torque: measured('torque', torques, 'at that speed'),
    speed: measured('rotation', speeds, 'of the engine'),
  },
  outputs: {
    result: { unit: 'hp', about: 'power' },
    kilowatts: { unit: 'kW', about: 'power' },
  },
  formula: 'torque x rpm / 5252.1',
  range: '0 to 5000 ft-lb, 0 to 20,000 rpm',
  source: 'mechanics',
  mark: 'computed',
  work: ({ torque, speed }) => {
    const power = enginePowerOf(torque, speed);
    return { values: { result: power, kilowatts: convert(power, 'hp', 'kW') } };
  },
});
