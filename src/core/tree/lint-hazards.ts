import type { Tell } from '../problem.ts';
import type { Tree } from './model.ts';

type Hazard = { readonly word: RegExp; readonly cautions: readonly string[] };

/** Words of danger, and the cautions of which one must stand where they are used. */
const hazards: readonly Hazard[] = [
  {
    word: /\b(fuel|gasoline|carburetor (top|off)|float bowl)\b/i,
    cautions: [
      'fuel-fire',
      'fuel-leak',
      'tank',
      'hydro-lock',
      'solvent',
      'comp-mist',
      'backfire',
      'runaway',
      'exhaust',
      'co',
      'roadtest',
      'eyes',
      'brake-stop',
    ],
  },
  {
    word: /\b(jack|jacked|axle stands?|wheels? up|under the vehicle)\b/i,
    cautions: ['lift', 'brake-stop'],
  },
  { word: /\b(fan|belts?)\b/i, cautions: ['rotate', 'belt', 'crank', 'lift', 'charge'] },
  {
    word: /\b(radiator cap|boils?|boiling|coolant)\b/i,
    cautions: ['scald', 'hot', 'hydro-lock', 'rotate', 'eyes'],
  },
  {
    word: /\b(spark|high tension|plug leads?|coil lead)\b/i,
    cautions: ['ht', 'fuel-fire', 'batt-gas', 'comp-mist', 'crank', 'hot', 'batt-order'],
  },
  {
    word: /\b(brake fluid|brake linings?|drums?|asbestos)\b/i,
    cautions: ['brake-dust', 'brake-fluid', 'brake-stop', 'drum-off'],
  },
  { word: /\b(solvent|cleaner spray|ether)\b/i, cautions: ['solvent', 'fuel-fire'] },
  { word: /\b(acid|battery gas|hydrometer)\b/i, cautions: ['batt-acid', 'batt-gas', 'eyes'] },
  {
    word: /\b(cranks?|cranking|START)\b/,
    cautions: [
      'crank',
      'starter-heat',
      'ht',
      'comp-mist',
      'rotate',
      'batt-gas',
      'hydro-lock',
      'short',
      'wire-fire',
      'backfire',
      'co',
      'meter-amps',
      'jumper',
      'hot',
    ],
  },
];

/** Every hazard word in a step has a caution that belongs to it. */
export function lintHazards(tree: Tree, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks))
    lintStep([check.ask, ...check.how], check.cautions, { path: `checks.${id}`, tell });
  for (const [id, { repair }] of Object.entries(tree.causes))
    lintStep(repair.do, repair.cautions, { path: `causes.${id}.repair`, tell });
}

type Place = { readonly path: string; readonly tell: Tell };

function lintStep(
  texts: readonly string[],
  cautions: readonly string[],
  { path, tell }: Place,
): void {
  for (const { word, cautions: fitting } of hazards) {
    const said = texts.map((text) => word.exec(text)?.[0]).find((one) => one !== undefined);
    if (said === undefined || fitting.some((id) => cautions.includes(id))) continue;
    tell({
      code: 'hazard-without-caution',
      path: `${path}.cautions`,
      value: said,
      message: `A step says "${said}", and no caution stands before it.`,
      mend: `Add one of: ${fitting.slice(0, 4).join(', ')}.`,
    });
  }
}
