/** Work that no caution makes safe, whatever stands beside it. */
export type Refusal = {
  readonly name: string;
  readonly words: RegExp;
  /** What it does, as a sentence. */
  readonly why: string;
};

const spirit =
  '(fuel|petrol|gasoline|gas|diesel|ether|meths|thinners?|starting fluid|easy[- ]start)';

/** Common practice, no source. */
export const refusals: readonly Refusal[] = [
  {
    name: 'a bigger fuse',
    words:
      /\b((bigger|larger|heavier|stronger|higher[- ]rated|next size|over[- ]?size) (up )?fuse|(bigger|larger|heavier) (one|rating) (in|into|for) the fuse|up-?rate the fuse|fuse one size up|\d+ ?(a|amp) (fuse )?(instead of|in place of|where)\b)\b/i,
    why: 'The wire becomes the fuse, and the harness burns.',
  },
  {
    name: 'something else in place of a fuse',
    words:
      /\b((foil|silver paper|tin|nail|coin|paper ?clip|hairpin|bolt|staple|wire|strand|copper|jumper|wrench|spanner|screwdriver) [^.;?!]*\b(around|round|across|over|in place of|instead of|for) (the |a |its )?(blown |burnt |dead |old )?(fuse|fusible link|circuit breaker|breaker)\b|(wrap|bridge|bypass|short|link|jump) (out )?(the |a |its )?(blown |burnt )?(fuse|fusible link|circuit breaker|breaker)\b(?! (box|holder|clip|tester)))/i,
    why: 'Nothing stops the current then, and the harness burns.',
  },
  {
    name: 'an engine run behind a shut door',
    words:
      /\b(run|running|start|started|idle|idling|warm|rev)\b[^.;?!]*\b((doors?|windows?) (is |are |kept |pulled |rolled )?(shut|closed|down|to)|(shut|closed|sealed) (garage|shed|barn|workshop|shop|door))\b|\b(shut|close) the (garage |shop |workshop |shed )?doors?\b[^.;?!]*\b(run|start|idle|warm|rev)\b/i,
    why: 'Exhaust gas kills within minutes, without a smell.',
  },
  {
    name: 'a flame at fuel',
    words:
      /\b(((naked|open|bare) (flame|light)|flame|match|lighter|candle|blow[- ]?(lamp|torch)|cigarette)\b[^.;?!]*\b(tank|fuel|petrol|gasoline|carburett?or|carb|float (bowl|chamber)|filler|vapou?r)|(tank|fuel|petrol|gasoline|carburett?or|carb|float (bowl|chamber)|filler|vapou?r)\b[^.;?!]*\b(naked|open|bare) (flame|light)|(tank|fuel|petrol|gasoline|filler)\b[^.;?!]*\b(by|with|over|hold|held|strike|light|lit) (a |the )?(lit |struck )?(match|candle|lighter|blow[- ]?(lamp|torch)))\b/i,
    why: 'Fuel vapor lights, and the vapor in a tank explodes.',
  },
  {
    name: 'hot work on a fuel tank',
    words:
      /\b((weld|braze|grind|drill|cut|burn)(s|ed|ing)? [^.;?!]*\b(fuel |petrol |gas )?tank|tank\b[^.;?!]*\b(welded|brazed|soldered|ground|drilled|heated))\b|\bsolder(s|ed|ing)? [^.;?!]*\b(?<!(header|radiator|expansion) )tank\b/i,
    why: 'An empty tank explodes too.',
  },
  {
    name: 'fuel poured into the throat',
    words: new RegExp(
      String.raw`\b(pour|tip|trickle|dribble|squirt|splash|spoon|spray)(s|ed|ing)?\b[^.;?!]*\b${spirit}\b[^.;?!]*\b(throat|carburett?ors?|carbs?|intake|choke|venturi|air cleaner|cylinders?|plug holes?)\b`,
      'i',
    ),
    why: 'It throws a flame back at whoever pours.',
  },
  {
    name: 'fuel sucked by mouth',
    words: new RegExp(
      String.raw`\b(suck|siphon|syphon)(s|ed|ing)?\b[^.;?!]*\b(mouth|suck)\b|\b(suck) (the |some )?${spirit}\b`,
      'i',
    ),
    why: 'A mouthful in the lungs kills.',
  },
  {
    name: 'a hot cap opened',
    words:
      /\b(radiator|rad|pressure|filler|header tank|expansion tank)( tank)? cap\b[^.;?!]*\b(off|open|undo|undone|unscrew)\b[^.;?!]*\b(while|when|still|engine) (it is |it's |still )?(hot|boiling|running)\b|\b(take|undo|open|unscrew) (off )?the (hot|boiling) (radiator|rad|pressure) cap\b/i,
    why: 'Steam and boiling water shoot out.',
  },
  {
    name: 'a battery taken off a running engine',
    words:
      /\b(battery|ground|earth) (lead|cable|clamp|terminal|strap|off|out)\b[^.;?!]*\b(while|with) (it|her|the engine)( is)? (running|runs|idling)|\b(pull|take|lift|undo) (off )?(the |a )?(battery|ground|earth) [^.;?!]*\bengine (is )?(running|idling)\b/i,
    why: 'The volts run away, burn what is electronic, and the spark is at a gassing battery.',
  },
  {
    name: 'a vehicle held by a jack or by bricks alone',
    words:
      /\b(under (it|her|the (car|vehicle|truck|van))|underneath|beneath it)\b[^.;?!]*\b(on|with only|held by|just) (the|a) jack\b|\b(bricks?|cinder blocks?|concrete blocks?|breeze blocks?) under\b|\bon (bricks|cinder blocks|breeze blocks|concrete blocks)\b/i,
    why: 'A jack sinks and bricks burst without warning.',
  },
  {
    name: 'a lead held in the hand',
    words:
      /\bhold (the |a |each )?(end of )?(the |a )?(HT|plug|coil|king|spark|high[- ]tension)( plug)? (lead|wire)s?\b[^.;?!]*\b(in (your|the|bare) (hand|fingers?)|by hand|bare hand)/i,
    why: 'Twenty thousand volts go through the heart; some electronic ignitions kill.',
  },
  {
    name: 'a post shorted for a spark',
    words:
      /\b(short|touch|flash|tap|strike|scratch)(s|es|ed|ing)?\b[^.;?!]*\b(across|between) the (battery |two )?(posts|terminals of the battery)|\bwrench across the (posts|battery)\b/i,
    why: 'The battery may burst, and the tool welds itself fast.',
  },
];

/** Words by which a sentence forbids what it names. */
export const forbidding = /\b(never|no|nor|must not|do not|don't|not|away from|clear of)\b/i;

/**
 * Whether a text tells somebody to do such work, not to leave it: a sentence that forbids it
 * ("Never a bigger fuse") stands before the words that name it. "If it does not hold, ..." forbids
 * nothing.
 */
export function refusedIn({ words }: Refusal, text: string): string | undefined {
  for (const sentence of text.split(/(?<=[.;:?!])\s+/)) {
    const found = words.exec(sentence);
    if (found === null) continue;
    const before = sentence
      .slice(0, found.index + found[0].length)
      .replace(/\b(if|when|where|while|until)\b[^,]*,/gi, '');
    if (!forbidding.test(before)) return found[0];
  }
  return undefined;
}
