import fc from 'fast-check';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Program } from '../../src/app/program.ts';
import { settingLines } from '../../src/app/pages/settings.ts';
import { defaultSettings, type Settings } from '../../src/core/settings.ts';
import { parseConditions } from '../../src/core/session/rules/vehicle.ts';
import { convert } from '../../src/core/trade/units/units.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { readSettings } from '../../src/store/settings.ts';
import { makeProgram, press } from '../helpers/program.ts';

/** Down to the line of a setting, and Enter: there are more lines than digits. */
const toLine = (setting: keyof Settings): string => {
  const line = settingLines.findIndex(({ key }) => key === setting);
  return `<home>${'<down>'.repeat(line)}<enter>`;
};

/** What a person does on the page of settings: turn one, or type into one. */
const turns = settingLines.filter((line) => 'values' in line).map(({ key }) => key);
const typed = {
  who: ['JB', 'metric', '5200'],
  altitude: ['5200', '1600 m', '5200ft', '-200'],
  currency: ['EUR', 'CHF', 'kr'],
  sessions: ['jobs', '~/my jobs', 'a/b'],
} as const;

type Act =
  | { readonly do: 'turn'; readonly setting: keyof Settings }
  | { readonly do: 'type'; readonly setting: keyof typeof typed; readonly text: string }
  | { readonly do: 'restart' };

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.constant({ do: 'restart' as const }),
  fc.constant({ do: 'turn' as const, setting: 'units' as const }),
  fc.constantFrom(...turns).map((setting) => ({ do: 'turn' as const, setting })),
  fc
    .constantFrom(
      ...(['who', 'altitude', 'currency', 'sessions'] as const).flatMap((setting) =>
        typed[setting].map((text) => ({ setting, text })),
      ),
    )
    .map((one) => ({ do: 'type' as const, ...one })),
);

/** What each setting means, whatever the units are: a height in meters, the rest as it stands. */
function meanings(settings: Settings): Readonly<Record<string, unknown>> {
  const read = parseConditions({ altitude: settings.altitude }, settings.units);
  const height = read.kind === 'good' ? read.value.altitude : undefined;
  return {
    ...settings,
    altitude:
      height === undefined
        ? settings.altitude
        : Math.round(convert(height.value, height.unit, 'm')),
  };
}

function take(program: Program, one: Exclude<Act, { do: 'restart' }>): void {
  const old = program.state().settings[one.setting];
  press(program, toLine(one.setting));
  if (one.do === 'type')
    press(program, `${'<end>'}${'<back>'.repeat(old.length)}${one.text}<enter>`);
}

/** Saved settings are on the disk before the program is started again. */
const onDisk = async (folder: string, program: Program): Promise<void> => {
  await expect
    .poll(() => readSettings(nodeFiles, join(folder, 'settings')))
    .toEqual(program.state().settings);
};

/** The settings page of a program that starts in a folder. */
function startIn(folder: string): Program {
  const settings = readSettings(nodeFiles, join(folder, 'settings'));
  const { program } = makeProgram({ folder, settings });
  press(program, 'g');
  return program;
}

/** What acts made of settings that they were not about, before and after each. */
async function changes(acts: readonly Act[]): Promise<readonly (readonly unknown[])[]> {
  const folder = mkdtempSync(join(tmpdir(), 'droplight-'));
  let program = startIn(folder);
  const seen: (readonly unknown[])[] = [];
  for (const one of acts) {
    const before = meanings(program.state().settings);
    if (one.do === 'restart') await onDisk(folder, program);
    if (one.do === 'restart') program = startIn(folder);
    else take(program, one);
    const own = one.do === 'restart' ? {} : { [one.setting]: 0 };
    seen.push([one, { ...before, ...own }, { ...meanings(program.state().settings), ...own }]);
  }
  return seen;
}

test('no setting changes its meaning when another one is changed, nor when the program starts anew', async () => {
  const property = fc.asyncProperty(fc.array(act, { maxLength: 12 }), async (acts) => {
    const seen = await changes(acts);

    expect(seen.map(([one, , after]) => [one, after])).toEqual(
      seen.map(([one, before]) => [one, before]),
    );
  });

  await fc.assert(property, { numRuns: 60 });
});

test('every setting is turned or typed here', () => {
  expect([...turns, ...Object.keys(typed)].toSorted()).toEqual(
    Object.keys(defaultSettings).toSorted(),
  );
});
