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
const moving = ['roadtest', 'brake-stop', 'brake-if'] as const;

/**
 * Which word asks for which caution, in American, British and plain words: common practice, no
 * source. Whole words only; turns of phrase that hurt nobody ("parking brake on", "cranking amps",
 * a cabin fan "on high") are left out.
 */
export const hazards: readonly Hazard[] = [
  {
    name: 'fuel',
    words:
      /\b(fuel|gasoline|petrol|float (bowl|chamber)|gas (line|pipe|can|leak|cap|pedal)|pipe from the pump)\b/i,
    cautions: fuel,
  },
  {
    name: 'tank',
    words: /\b(?<!(header|expansion|washer) )tanks?\b/i,
    cautions: ['tank', 'fuel-fire', 'fuel-leak', 'scald'],
  },
  {
    name: 'battery',
    words:
      /\bbatter(y|ies)\b(?! charged\b)|\b(battery|main) earth\b|\bearth (lead|strap|cable) off\b/i,
    cautions: [...live, 'batt-gas', 'batt-acid', 'charger', 'jump', 'charge', 'short-ring'],
  },
  { name: 'acid', words: /\b(acid|electrolyte|hydrometer)\b/i, cautions: ['batt-acid'] },
  {
    name: 'charger',
    words: /\bcharger\b/i,
    cautions: ['charger', 'batt-gas', 'jump'],
  },
  {
    name: 'jump lead',
    words: /\b(jump (leads?|starts?|starting|her)|booster (leads?|cables?)|slave battery)\b/i,
    cautions: ['jump'],
  },
  {
    name: 'jumper',
    words: /\b(jumpers?|jump (it|the)|bridg(e|es|ed|ing) (?!(reads?|rectifier)\b)|bridging)/i,
    cautions: [...live, 'jumper', 'fullfield', 'meter-amps', 'crank', 'ht'],
  },
  {
    name: 'live metal',
    words:
      /\b(live (lead|cable|stud|post|wire|terminal|feed|nut|bar|side)s?|(nuts?|studs?|terminals?|cables?|wires?|leads?) (on|off|at|of|from) (the )?(back of the |rear of the )?(starter|solenoid|alternator|dynamo|generator|bulkhead)|(big|heavy|thick|fat) (nuts?|terminals?|wires?|cables?)|(across|join)[^.;]* (spanner|wrench|screwdriver)|(spanner|wrench|screwdriver) across)\b/i,
    cautions: [...live, 'short-ring', 'jumper', 'polarity', 'ht'],
  },
  { name: 'ammeter', words: /\bammeter\b/i, cautions: live },
  { name: 'fusible link', words: /\bfusible links?\b/i, cautions: live },
  {
    name: 'smoking wire',
    words:
      /\b(wir(e|es|ing)|loom|harness|cables?|insulation|motor|fuse)\b[^.;]*\b(?<!no )(smok(e|es|ing)|glow(s|ing)?)\b/i,
    cautions: ['wire-fire', 'short', 'hot'],
  },
  {
    name: 'jack',
    words:
      /\b(jack(s|ed)?|(axle|rated|on) stands?|(under|beneath) (the (vehicle|car|truck|van)|her)|(get|crawl|lie|reach|go|slide|hands?) (in |up |down )?(underneath|from below)|ramps|blocks? under|wheels? (up|off the (ground|floor))|(raise|lift) (the )?(front|rear|back|car|nose|tail|it up|her))\b/i,
    cautions: ['lift'],
  },
  {
    name: 'fan or belt',
    words:
      /\b(?<!(cabin|heater|blower) )(fans?(?! (on|off|at|switch|speeds?|motor)\b(?! the (engine|radiator)))|(?<!seat )belts?)\b/i,
    cautions: ['rotate', 'crank'],
  },
  {
    name: 'hot part',
    words: /\b(hot|scorching|red heat)\b/i,
    cautions: ['hot', 'scald', 'starter-heat', 'wire-fire'],
  },
  {
    name: 'spark',
    words: /\bsparks?\b/i,
    cautions: [...fuel, 'ht', 'batt-gas', 'charger', 'short'],
  },
  {
    name: 'high tension',
    words:
      /\b(high[- ]tension|h\.?t\.?|(coil|plug|center|centre|king|ignition) leads?|(plug|king) wires?)\b/i,
    cautions: ['ht'],
  },
  {
    name: 'brake',
    words:
      /\b(?<!(parking|hand|on the) )brak(e|es|ing)\b(?! (on|set|lamps?|lights?|switch|pedal switch)\b)/i,
    cautions: [
      'brake-stop',
      'brake-if',
      'brake-dust',
      'brake-fluid',
      'drum-off',
      'lift',
      'roadtest',
    ],
  },
  {
    name: 'lining dust',
    words:
      /\b(asbestos|linings?|brake (shoes|pads)|brake dust|lagging|clutch (dust|plate|bell|housing)|(old|heat|exhaust) (wraps?|blanket)|heat shield felt)\b/i,
    cautions: ['brake-dust'],
  },
  {
    name: 'scraping',
    words:
      /\b(scrap(e|es|ed|ing)|wire[- ]brush(ed|ing)?|sand(ed|ing)? (it|the)|decoke|(grind|pick|clean|chip) (off )?(the )?old gasket)\b/i,
    cautions: [...live, 'eyes', 'brake-dust', 'lead-deposit', 'batt-gas', 'short-ring'],
  },
  {
    name: 'compressed air',
    words:
      /\b((?<!hot[- ])air[- ]?(line|gun|hose)|(?<!(air[- ]conditioning|conditioner|the|a\/c) )(a )?compressor|compressed air|shop air|blow(n|s|ing)? (it |them |the [a-z]+ )?(dry|clean|clear|out|off)|blow the (dust|dirt))\b/i,
    cautions: ['air-line', 'eyes'],
  },
  {
    name: 'refrigerant',
    words:
      /\b(refrigerant|(air[- ]?con(ditioning|ditioner)?|a\/c) (gas|pipes?|hoses?|lines?|unions?|fittings?|compressor|condenser)|(un(bolt|do|screw)|open) the compressor|let the gas out|(pipes?|hoses?|lines?|unions?|fittings?) (from|off|of|at|on) the condenser)\b/i,
    cautions: ['refrigerant'],
  },
  {
    name: 'exhaust',
    words: /\b(?<!clear of (the )?)(exhaust|tail ?pipe)\b/i,
    cautions: ['co', 'hot', 'lead-deposit', 'lift', 'fuel-fire'],
  },
  {
    name: 'cranking',
    words:
      /\b((?<!after )crank(s|ed|ing)?(?! (amps|current|volts)\b)|turn (it|her|the engine) over|spin (it|her|the engine) (over|on the starter)|(press|work|operate|bump|flick|blip|tap) the starter)\b/i,
    cautions: running,
  },
  {
    name: 'running engine',
    words:
      /\b((?<!(not|never|to|crank or) )((start|run|rev|fire) (it|her)|(start|run|rev|warm|fire( up)?) (her|the (car|engine|truck|van))|warm it up)\b|let (it|her) (warm|run|tick|idle)|(leave|keep|have) (it|her|the engine) (running|ticking)|(with|while) (it|her|the (engine|motor)) (is )?(running|runs|ticking over|ticks over|idling|idles|turning|turns)|engine running|run(ning)? up to temperature|throttle wide open and|let (it|her) (scream|rev))/i,
    cautions: [
      'rotate',
      'co',
      'crank',
      'runaway',
      'backfire',
      'roadtest',
      'brake-stop',
      'brake-if',
      'charge',
    ],
  },
  {
    name: 'road',
    words:
      /\b(drive (it|her|the (car|truck|van))|(take|run) (it|her|the (car|truck|van)) (up|down|round|around|for a|home)|(round|around) the block|(?<!(back|used|use|found) )(on|up|down) the (road|hill|street|highway|motorway)|test[- ]?drive)\b/i,
    cautions: moving,
  },
  {
    name: 'coolant',
    words:
      /\b(coolant|radiator|antifreeze|thermostat|(heater|top|bottom|water|rad) (hoses?|pipes?)|(header|expansion) tank|(pressure|rad) cap|boil(s|ed|ing) over|boiling (water|coolant))\b/i,
    cautions: ['scald'],
  },
  {
    name: 'solvent',
    words:
      /\b(solvents?|ether|spray(s|ed)?|(carb|carburetor|carburettor|brake|contact|switch|choke) cleaner|cleaner and air|meths|methylated spirits?|white spirit|thinners|(paint|cellulose) thinner|acetone|degreaser|paraffin|kerosene|naphtha|turps|benzine|starting fluid|easy[- ]start)\b/i,
    cautions: ['solvent', 'fuel-fire'],
  },
  {
    name: 'flame',
    words:
      /\b(propane|(?<!no )flame(?! trap)|(?<!flash)(?<!flash )torch|blow[- ]?(lamp|torch)|(?<!(head|tail|side) )lit match|with a (match|lighter|candle)|cigarette end|weld(s|ed|ing)?|braz(e|ed|ing)|grinder|heat gun)\b/i,
    cautions: [...fuel, 'solvent', 'wire-fire', 'hot'],
  },
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

/** The hazards that these texts and this standing speak of, each with the word that names it. */
export function hazardsIn(
  texts: readonly string[],
  standing: Standing,
): readonly Omit<Hazard, 'words'>[] {
  const spoken = hazards.flatMap(({ name, words, cautions }) => {
    const word = texts.map((text) => words.exec(text)?.[0]).find((one) => one !== undefined);
    return word === undefined ? [] : [{ name: `${name} ("${word}")`, cautions }];
  });
  return [...spoken, ...standingHazards(standing)];
}
