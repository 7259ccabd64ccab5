import type { Tell } from '../../problem.ts';
import type { Standing } from '../model.ts';
import { forbidding } from './refused-words.ts';

/** Something that a caution forbids a hand to do while the vehicle stands so. */
type Forbidden = {
  readonly name: string;
  /** Cautions in `shop.json` that say so. */
  readonly cautions: readonly string[];
  /** A hand at the part. */
  readonly touch: RegExp;
  /** Words that make it harmless: gloves, a tool, something cold. */
  readonly safe: RegExp;
  /** Words of the sentence itself that say that it is dangerous now. */
  readonly now: RegExp;
  /** Standings in which it is dangerous, whatever the sentence says. */
  readonly stands: (at: Standing) => boolean;
};

const turning = ({ engine }: Standing): boolean => engine !== undefined && engine !== 'off';
const hot = ({ heat }: Standing): boolean => heat === 'hot' || heat === 'hot-soaked';

const hand =
  '(touch(es|ed|ing)?|feel|grip|grab|grasp|(hand|finger|palm|thumb)s? (on|over|against|round|under|behind)|bare hands?)';
const work =
  '(clean|file|emery|sand|scrape|polish|wipe|dress|brush|grease|tighten|slacken|undo|unscrew|unplug|bend|pinch|press|push|pull|lift|wiggle|move|take off|hold|grip|touch|feel|grab|turn)';
const at = (verbs: string, parts: string): RegExp =>
  new RegExp(String.raw`\b${verbs}\b[^.;?!]*\b${parts}\b`, 'i');

const running =
  /\b((engine|it|motor) (is )?(running|runs|idling|idles|turning|turns|cranking|cranks)|running engine|engine running|at idle|while (it|the engine)( is)? (runs?|running|turns?|turning|cranks?|cranking|idles?|idling))\b/i;
const live =
  /\b(ignition|key|current|power)( is| still)? (on|at run)\b|\b(ignition|key) on\b|\bbattery (still )?connected\b/i;

/** Common practice, no source. What is named here is what the cautions of the shop say in words. */
const forbidden: readonly Forbidden[] = [
  {
    name: 'hot metal',
    cautions: ['hot'],
    touch: at(
      hand,
      '(manifold|exhaust|tail ?pipe|muffler|ballast|bulbs?|hubs?|drums?|radiator|cylinder head|converter|turbo|heat riser)',
    ),
    safe: /\b(gloves?|cold|cooled|cool|near|close to|not on|rag|thermometer|back of the hand|an? inch|above|stick)\b/i,
    now: /\b(hot|running|red)\b/i,
    stands: (now) => hot(now) || turning(now),
  },
  {
    name: 'fan and belts',
    cautions: ['rotate', 'crank'],
    touch: at(
      `(${hand}|(press|push|pull|hold|turn|spin|flick|wiggle|twist|tighten|adjust|squeeze) )`,
      '(fan|fan blades?|blades?|belts?|pulleys?)',
    ),
    safe: /\b(engine (off|stopped|still)|stop(s|ped)? the engine|switched off|key off|at rest|standing still|clear of|nobody|from (above|behind) the|away from|by (the )?switch)\b/i,
    now: running,
    stands: turning,
  },
  {
    name: 'high tension leads',
    cautions: ['ht'],
    touch: at(
      '(hold|grip|touch|feel|pull|lift|wiggle|move|take off|hand on|finger on)',
      '((plug|coil|ignition|king|high[- ]tension) (leads?|wires?|boots?|caps?)|leads? (off|from) (the|a|each) plugs?|distributor cap)',
    ),
    safe: /\b(pliers|gloves?|insulated|tongs|puller|engine (off|stopped)|key off|stopped|dry wood|plastic)\b/i,
    now: running,
    stands: turning,
  },
  {
    name: 'a coil lead left open while it cranks',
    cautions: ['ht', 'crank'],
    touch:
      /\bcrank\b[^.;?!]*\b(coil|king|center) lead (off|out|open|hanging|loose)\b|\b(coil|king|center) lead (off|out|hanging|loose)\b[^.;?!]*\bcrank\b/i,
    safe: /\b(ground(ed|s)?|tester|gap|clip(ped)?|feed)\b/i,
    now: /\bcrank/i,
    stands: () => true,
  },
  {
    name: 'a spark or flame at fuel vapor',
    cautions: ['fuel-fire', 'fuel-leak', 'tank', 'comp-mist', 'solvent'],
    touch:
      /\b(strike|light|hold|use|with|by|bring|draw|make|lay|watch for) (a |an |the )?(bare |naked |open |lit )?(match|flame|lighter|candle|torch|grinder|trouble light|bare bulb|cigarette)\b/i,
    safe: /\b(no|flashlight|clear of fuel|far from)\b/i,
    now: /./,
    stands: () => true,
  },
  {
    name: 'a spark or flame at a battery',
    cautions: ['batt-gas', 'charger'],
    touch:
      /\b(strike|light|hold|use|with|by|bring) (a |an |the )?(bare |naked |open |lit )?(match|flame|lighter|candle|torch|cigarette)\b|\b(clips?|clamps?) (off|on|moved|swapped)\b[^.;?!]*\bcharger (on|running)\b|\bcharger (on|running)\b[^.;?!]*\b(clips?|clamps?) (off|on|moved|swapped)\b/i,
    safe: /\b(no|flashlight)\b/i,
    now: /./,
    stands: () => true,
  },
  {
    name: 'the live lead taken off first',
    cautions: ['batt-order', 'short', 'short-ring'],
    touch:
      /\b(live|positive|hot|red) (battery )?(lead|cable|clamp|terminal) (off )?first\b|\b(live|positive) (lead|cable|clamp) off, then (the )?ground\b|\bground (lead|cable) (back )?on (first|before)\b/i,
    safe: /\b(refit|back on|goes on|connect(ed)?)\b/i,
    now: /./,
    stands: () => true,
  },
  {
    name: 'a hot cap opened',
    cautions: ['scald'],
    touch:
      /\b(radiator|pressure|rad|tank) cap (off|open(ed)?|undone)\b|\b(open|undo|take off|remove|ease off) the (radiator|pressure|rad|tank)? ?cap\b/i,
    safe: /\b(cold|cooled|cool|hiss|rag|first stop)\b/i,
    now: /\b(hot|boil(s|ing)?|running)\b/i,
    stands: (now) => hot(now) || turning(now),
  },
  {
    name: 'a body under a running engine',
    cautions: ['lift', 'co'],
    touch:
      /\b(get|go|crawl|lie|slide|reach|look|listen) (up )?(from )?(under|underneath|beneath|below)\b(?! the (hood|dash|seat|lid|cap|air cleaner|bonnet))/i,
    safe: /\b(engine (off|stopped)|key off|stopped|mirror)\b/i,
    now: running,
    stands: turning,
  },
];

/** A hand at what is live or turns, where the sentence itself says that it is: no caution makes it safe. */
const handled: readonly { readonly name: string; readonly words: RegExp; readonly now: RegExp }[] =
  [
    {
      name: 'a hand on what turns',
      words: at(
        work,
        '(fan|fan blades?|blades?|(fan |drive )?belts?|pulleys?|(?<!wheel )hubs?|commutator|coupling|propeller shaft|drive ?shaft)',
      ),
      now: running,
    },
    {
      name: 'a hand on what is live',
      words: at(
        '(clean|file|emery|sand|scrape|polish|wipe|dress|brush|grease|tighten|slacken|undo|unscrew|bend|pinch|touch|feel|grab)',
        '(points|contacts?|breaker plate|condenser|(coil|ballast|starter|solenoid|alternator|generator|switch) (terminals?|nuts?|studs?|tags?)|terminals?|studs?|bus ?bar|commutator|slip rings?)',
      ),
      now: new RegExp(`${live.source}|${running.source}`, 'i'),
    },
  ];

/** The sentences of a text that tell somebody to do something: those that forbid it are left out. */
export const sentencesTold = (text: string): readonly string[] =>
  text
    .split(/(?<=[.;?!])\s+/)
    .filter(
      (sentence) => !forbidding.test(sentence.replace(/\b(if|when|where|until)\b[^,]*,/gi, '')),
    );

type Work = {
  readonly texts: readonly (readonly [path: string, text: string])[];
  readonly cautions: readonly string[];
  readonly standing: Standing;
};

/** Sentences of a step that tell a hand to do what a caution of the same step forbids, or what none makes safe. */
export function lintTouching({ texts, cautions, standing }: Work, tell: Tell): void {
  for (const [path, text] of texts)
    for (const sentence of sentencesTold(text)) {
      const bare = handled.find(({ words, now }) => words.test(sentence) && now.test(sentence));
      if (bare !== undefined) tell(barehanded(path, sentence, bare.name));
      const against = forbidden.find(
        (one) =>
          one.cautions.some((id) => cautions.includes(id)) &&
          one.touch.test(sentence) &&
          !one.safe.test(sentence) &&
          (one.now.test(sentence) || one.stands(standing)),
      );
      if (against !== undefined && bare === undefined)
        tell({
          code: 'step-against-caution',
          path,
          value: sentence,
          message: `This tells a hand to do what a caution of the same step forbids (${against.name}).`,
          mend: 'Say how it is done without: engine off, cold, with a tool, from a distance. Or take the hand out.',
        });
    }
}

const barehanded = (path: string, value: string, name: string) => ({
  code: 'hand-in-danger',
  path,
  value,
  message: `This tells somebody to do what no caution makes safe (${name}). It shocks, burns or tears off what comes near.`,
  mend: 'Key off, engine off, then the hand. A warning against it may stand: begin the sentence with "Never".',
});
