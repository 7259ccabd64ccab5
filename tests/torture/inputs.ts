import { enter } from '../../src/commands/enter.ts';
import { Action } from '../../src/core/session/action.ts';
import { parseSettings } from '../../src/core/settings.ts';
import { clean, cleanLine, safeJson } from '../../src/core/text.ts';
import { quantityNames } from '../../src/core/trade/units/quantities.ts';
import { parseReadings } from '../../src/core/trade/units/readings.ts';
import { unitNames } from '../../src/core/trade/units/units.ts';
import { begun } from '../helpers/begun.ts';
import { runCommand } from '../helpers/commands.ts';
import { driving, hostileText, chance, pick, type Size, type Tried } from './lib.ts';

/** Runs one input; whatever is thrown, takes over a second or drives a terminal is a failure. */
function hold(failures: string[], input: string, job: () => string): void {
  const began = performance.now();
  const told = JSON.stringify(input).slice(0, 200);
  try {
    if (driving.test(job())) failures.push(`escape: ${told}`);
  } catch (error) {
    failures.push(`crash: ${told}: ${String(error)}`);
  }
  if (performance.now() - began > 1000) failures.push(`over 1 s: ${told}`);
}

/** Readings, settings, actions and text of hostile pieces, at the doors that take them. */
export function doors({ seed, count }: Size): Tried {
  const random = chance(seed);
  const failures: string[] = [];
  for (let tries = 0; tries < count; tries += 1) {
    const text = hostileText(random);
    const other = hostileText(random);
    const quantity = pick(random, quantityNames);
    const [unit = ''] = unitNames(quantity);
    hold(failures, text, () => {
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
    failures,
    seen: 'readings, settings, actions, text',
  };
}

const words = [
  'note',
  'find',
  'repair',
  'condemn',
  'correct',
  'prove',
  'standing',
  'conditions',
  'timer',
];

function line(random: () => number): string {
  if (random() < 0.3) return hostileText(random);
  const said: Record<string, unknown> = { do: pick(random, words) };
  const fields = ['text', 'check', 'reading', 'told', 'altitude', 'n', 'cause', 'minutes', 'label'];
  for (const field of fields)
    if (random() < 0.4)
      said[field] = pick(random, [
        hostileText(random),
        'bat-rest-volts',
        '12.6 V',
        random() * 1e9,
        null,
      ]);
  return JSON.stringify(said);
}

/** Lines to `enter`: what it says ok to stands in the record as many times, and nothing else does. */
export async function entered({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  let [ok, tries] = [0, 0];
  while (tries < count) {
    const { folder, path } = await begun();
    const lines = Array.from({ length: Math.min(60, count - tries) }, () => line(random));
    tries += lines.length;
    const began = performance.now();
    try {
      const { out, err } = await runCommand(enter, [path], { folder, lines });
      if (driving.test(out + err)) failures.push(`escape after seed ${seed}, try ${tries}`);
      ok += out.split('"ok":true').length - 1;
    } catch (error) {
      failures.push(`crash near try ${tries}: ${String(error)}`);
    }
    if (performance.now() - began > 1000 * lines.length)
      failures.push(`over 1 s a line near ${tries}`);
  }
  return { attack: 'lines to enter', tries, failures, seen: `${ok} ok` };
}
