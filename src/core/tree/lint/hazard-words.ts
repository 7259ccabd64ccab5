import type { Standing } from '../model.ts';

/** Words that speak of something that can hurt, and the cautions of which one must stand beside them. */
export type Hazard = {
  readonly name: string;
  readonly words: RegExp;
  /** Ids in `shop.json`; any one of them is fitting. */
  readonly cautions: readonly string[];
};

const fuel = ['fuel-fire', 'fuel-leak', 'tank', 'comp-mist', 'hydro-lock'] as const;
const running = ['crank', 'starter-heat', 'hydro-lock', 'comp-mist', 'rotate', 'backfire'] as const;
const live = ['short', 'wire-fire', 'ammeter-live', 'batt-order'] as const;

/**
 * Which word asks for which caution: common practice, no source. Whole words only; turns of phrase
 * that hurt nobody ("parking brake on", "cranking amps") are left out.
 */
export const hazards: readonly Hazard[] = [
  { name: 'fuel', words: /\b(fuel|gasoline|float bowl)\b/i, cautions: fuel },
  { name: 'tank', words: /\btanks?\b/i, cautions: ['tank', 'fuel-fire', 'fuel-leak', 'scald'] },
  {
    name: 'battery',
    words: /\bbatter(y|ies)\b(?! charged\b)/i,
    cautions: [...live, 'batt-gas', 'batt-acid', 'charger', 'jump', 'charge', 'short-ring'],
  },
  { name: 'acid', words: /\b(acid|electrolyte|hydrometer)\b/i, cautions: ['batt-acid'] },
  {
    name: 'charger',
    words: /\bcharger\b/i,
    cautions: ['charger', 'batt-gas', 'jump'],
  },
  { name: 'jump lead', words: /\bjump (leads?|starts?|starting)\b/i, cautions: ['jump'] },
  {
    name: 'jumper',
    words: /\bjumpers?\b/i,
    cautions: [...live, 'jumper', 'fullfield', 'meter-amps'],
  },
  { name: 'ammeter', words: /\bammeter\b/i, cautions: live },
  { name: 'fusible link', words: /\bfusible links?\b/i, cautions: live },
  {
    name: 'jack',
    words: /\b(jack(s|ed)?|(axle|rated|on) stands?|under the vehicle)\b/i,
    cautions: ['lift'],
  },
  { name: 'fan or belt', words: /\b(fans?|(?<!seat )belts?)\b/i, cautions: ['rotate', 'crank'] },
  {
    name: 'hot part',
    words: /\bhot\b/i,
    cautions: ['hot', 'scald', 'starter-heat', 'wire-fire'],
  },
  {
    name: 'spark',
    words: /\bsparks?\b/i,
    cautions: [...fuel, 'ht', 'batt-gas', 'charger', 'short'],
  },
  {
    name: 'high tension',
    words: /\b(high[- ]tension|(coil|plug|center) leads?)\b/i,
    cautions: ['ht'],
  },
  {
    name: 'brake',
    words: /\b(?<!(parking|on the) )brak(e|es|ing)\b(?! (on|set|lamps?|switch)\b)/i,
    cautions: ['brake-stop', 'brake-dust', 'brake-fluid', 'drum-off', 'lift', 'roadtest'],
  },
  {
    name: 'lining dust',
    words: /\b(asbestos|linings?|brake shoes|brake dust)\b/i,
    cautions: ['brake-dust'],
  },
  {
    name: 'exhaust',
    words: /\b(?<!clear of (the )?)(exhaust|tail ?pipe)\b/i,
    cautions: ['co', 'hot', 'lead-deposit', 'lift', 'fuel-fire'],
  },
  {
    name: 'cranking',
    words: /\b(?<!after )crank(s|ed|ing)?\b(?! (amps|current|volts)\b)/i,
    cautions: running,
  },
  {
    name: 'coolant',
    words: /\b(coolant|radiator|antifreeze|thermostat)\b/i,
    cautions: ['scald'],
  },
  {
    name: 'solvent',
    words: /\b(solvents?|ether|spray(s|ed)?|(carburetor|brake|contact) cleaner|cleaner and air)\b/i,
    cautions: ['solvent', 'fuel-fire'],
  },
  { name: 'flame', words: /\b(propane|flame(?! trap)|torch)\b/i, cautions: [...fuel, 'solvent'] },
  {
    name: 'spring',
    words: /\bsprings?\b(?! back\b)/i,
    cautions: ['spring', 'runaway', 'eyes'],
  },
  { name: 'mercury', words: /\bmercury\b/i, cautions: ['mercury'] },
];

/** The same for how the vehicle stands while the work is done. */
export function standingHazards({ engine, heat }: Standing): readonly Omit<Hazard, 'words'>[] {
  const turning = { name: 'running engine', cautions: ['rotate'] };
  const gas = { name: 'exhaust of a running engine', cautions: ['co'] };
  const hot = { name: 'hot engine', cautions: ['hot', 'scald'] };
  const warm = heat === 'hot' || heat === 'hot-soaked' ? [hot] : [];
  if (engine === 'road') return [{ name: 'road test', cautions: ['roadtest'] }];
  if (engine === 'cranking') return [{ name: 'cranking engine', cautions: ['crank'] }, ...warm];
  return engine === undefined || engine === 'off' ? warm : [turning, gas, ...warm];
}
