import type { Standing } from '../../tree/model.ts';

/** How the vehicle stands, part by part, as what can be said of it. */
const words: { readonly [Part in keyof Standing]-?: Record<NonNullable<Standing[Part]>, string> } =
  {
    battery: {
      connected: 'the battery is connected',
      disconnected: 'the battery is disconnected',
      'meter-in-series': 'a meter is in series in the ground lead',
    },
    key: {
      off: 'the key is off',
      acc: 'the key is at ACC',
      run: 'the key is at RUN',
      start: 'the key is at START',
    },
    engine: {
      off: 'the engine is off',
      cranking: 'the engine is being cranked',
      idling: 'the engine is idling',
      'fast-idle': 'the engine is at a fast idle',
      revved: 'the engine is revved',
      road: 'the engine runs on the road',
    },
    heat: {
      cold: 'the engine is cold',
      warm: 'the engine is warm',
      hot: 'the engine is hot',
      'hot-soaked': 'the engine is heat-soaked',
    },
  };

/** Whole clauses, one for each part that is told: "the key is at RUN". */
export const standingWords = ({ battery, key, engine, heat }: Standing): readonly string[] => [
  ...(battery === undefined ? [] : [words.battery[battery]]),
  ...(key === undefined ? [] : [words.key[key]]),
  ...(engine === undefined ? [] : [words.engine[engine]]),
  ...(heat === undefined ? [] : [words.heat[heat]]),
];
