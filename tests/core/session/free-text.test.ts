import * as z from 'zod';
import { expect, test } from 'vitest';
import { eventKinds, modelOf, type Event } from '../../../src/core/session/event.ts';
import { changeFreeText, freeText, writtenBy } from '../../../src/core/session/free-text.ts';
import { Header } from '../../../src/core/session/header/header.ts';
import { Id } from '../../../src/core/tree/basics.ts';
import { withoutNames } from '../../../src/core/account/words/names.ts';
import { everyKind } from '../../helpers/every-kind.ts';
import { headerFor, stampAt } from '../../helpers/story.ts';

/** Where a model holds text that nobody has marked, or a value that may hold any. */
function unmarked(model: z.core.$ZodType, path: string): readonly string[] {
  if (model instanceof z.ZodOptional) return unmarked(model.unwrap(), path);
  if (model instanceof z.ZodArray) return unmarked(model.element, `${path}[]`);
  if (model instanceof z.ZodRecord) return unmarked(model.valueType, `${path}.*`);
  if (model instanceof z.ZodObject)
    return Object.entries(model.shape).flatMap(([name, one]) =>
      unmarked(one as z.core.$ZodType, `${path}.${name}`),
    );
  const known = [z.ZodNumber, z.ZodBoolean, z.ZodEnum, z.ZodLiteral];
  if (known.some((kind) => model instanceof kind) || model === Id) return [];
  return writtenBy(model) === undefined ? [path] : [];
}

test("every text of an event is marked as a person's or the program's; the rest is listed here", () => {
  expect(new Set(eventKinds.flatMap((kind) => unmarked(modelOf(kind), kind)))).toEqual(
    new Set([
      // Numbers with their units, or what a meter shows beyond its range: taken only once read.
      'found.readings[]',
      // A check and its part of the shop as they lay in the library.
      'check-taken.whole',
      'check-taken.shop',
      // Numbers and choices that a figure was worked out from.
      'noted.figure.inputs.*.value',
      // An id, or the number of an event.
      'photographed.about',
      'proved.readings[]',
      // A tree and its shop as they lay in the library.
      'leg.whole',
      'leg.shop',
      // Hidden by the model of the event that is corrected.
      'corrected.to.*',
    ]),
  );
  expect(unmarked(Header.shape.vehicle, 'vehicle')).toEqual([]);
});

test('a text that is not marked, or a value of any kind, is seen', () => {
  const model = z.object({ a: z.array(z.string()), b: z.unknown(), c: freeText() });

  expect(unmarked(model, 'new')).toEqual(['new.a[]', 'new.b']);
});

const hideNames = (events: readonly Event[]): string =>
  JSON.stringify(withoutNames({ header: headerFor(), events }).events);

test.each(eventKinds)('no free text of "%s" keeps a name, in a correction neither', (kind) => {
  const payload = everyKind.find((one) => one.kind === kind)!;
  const named = changeFreeText(modelOf(kind), payload, () => 'seen by JB') as Event;
  const event: Event = { ...named, n: 1, ...stampAt(1) };
  const correct = (n: number, of: number): Event => ({
    n,
    ...stampAt(n),
    kind: 'corrected',
    of,
    to: { ...named },
    reason: 'JB said so',
  });

  const hidden = hideNames([event, correct(2, 1), correct(3, 2), correct(4, 99)]);

  expect(hidden).not.toContain('JB');
  expect(hidden).toContain('the mechanic said so');
});

test('where a figure of the vehicle was read is free text too', () => {
  const header = headerFor();
  const sheet = { 'idle-vacuum': { value: 18, unit: 'inHg', where: "JB's own book" } };
  const hidden = withoutNames({
    header: { ...header, vehicle: { ...header.vehicle, sheet } },
    events: [],
  });

  expect(JSON.stringify(hidden.header.vehicle)).not.toContain('JB');
});
