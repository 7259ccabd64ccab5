import { Action } from '../../src/core/session/action.ts';
import { parseSettings } from '../../src/core/settings.ts';
import { clean, cleanLine, safeJson } from '../../src/core/text.ts';
import { quantityNames } from '../../src/core/trade/units/quantities.ts';
import { parseReadings } from '../../src/core/trade/units/readings.ts';
import { unitNames } from '../../src/core/trade/units/units.ts';
import { driving, hostileText, chance, pick, type Size, type Tried } from './lib.ts';
import { watch } from './watch.ts';

type Held = { readonly failures: string[]; readonly slow: string[] };

/** Runs one input; whatever is thrown or drives a terminal is a failure, what takes over a second is slow. */
function hold({ failures, slow }: Held, input: string, job: () => string): void {
  const spent = watch();
  const told = JSON.stringify(input).slice(0, 200);
  try {
    if (driving.test(job())) failures.push(`escape: ${told}`);
  } catch (error) {
    failures.push(`crash: ${told}: ${String(error)}`);
  }
  if (spent() > 1) slow.push(`over 1 s: ${told}`);
}

/** Readings, settings, actions and text of hostile pieces, at the doors that take them. */
export function doors({ seed, count }: Size): Tried {
  const random = chance(seed);
  const held: Held = { failures: [], slow: [] };
  for (let tries = 0; tries < count; tries += 1) {
    const text = hostileText(random);
    const other = hostileText(random);
    const quantity = pick(random, quantityNames);
    const [unit = ''] = unitNames(quantity);
    hold(held, text, () => {
      switch (tries % 4) {
        case 0:
          return safeJson(parseReadings(text, { quantity, unit }));
        case 1:
          return safeJson(
            parseSettings({ who: text, altitude: other, [text]: other, units: text }),
          );
        case 2:
          return safeJson(
            Action.safeParse({ do: pick(random, ['find', 'note', text]), text }).data ?? null,
          );
        default:
          return `${clean(text)} ${cleanLine(other)} ${safeJson({ [text]: other })}`;
      }
    });
  }
  return {
    attack: 'inputs at the doors',
    tries: count,
    ...held,
    seen: 'readings, settings, actions, text',
  };
}
