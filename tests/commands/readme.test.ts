import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { commandNamed, commands, usage } from '../../src/commands/table.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { runCommand } from '../helpers/commands.ts';

const readme = readFileSync('README.md', 'utf8');
const from = readme.indexOf('```\ndroplight  ');
const list = readme.slice(from, readme.indexOf('```', from + 3));

const verbs = [...(await runCommand(trees, ['help'])).out.matchAll(/^droplight trees (\S+)/gm)].map(
  ([, verb = '']) => verb,
);
const called: readonly (readonly string[])[] = [
  ...Object.keys(commands)
    .filter((name) => name !== 'trees')
    .map((name) => [name]),
  ...verbs.map((verb) => ['trees', verb]),
];

/** The options that a text tells, but for those of all commands. */
const optionsIn = (text: string): readonly string[] =>
  [...new Set([...text.matchAll(/--[a-z-]+/g)].map(([option]) => option))]
    .filter((option) => !['--trees', '--sessions', '--help', '--nope'].includes(option))
    .toSorted();

/** What a list says of a command: its line and those that go on with it. */
const linesOf = (text: string, words: string): string =>
  new RegExp(`^ *droplight ${words}\\b[^]*?(?=^ *droplight |$(?![^]))`, 'm').exec(text)?.[0] ?? '';

/** The options that a command takes, as it tells them to somebody who gave another. */
async function taken([name = '', ...more]: readonly string[]): Promise<readonly string[]> {
  const { err } = await runCommand(await commandNamed(name), [...more, '--nope']);
  return optionsIn(err.slice(err.indexOf('Options here:')));
}

test.each(called)(
  'README.md tells the options that %s %s takes, and no others',
  async (...words) => {
    const told = linesOf(list, words.filter((word) => word !== undefined).join(' '));

    expect(told).not.toBe('');
    expect(optionsIn(told)).toEqual(await taken(words));
  },
);

test.each(called.filter(([name]) => name !== 'trees'))(
  '--help tells of %s no option that it does not take',
  async (name = '') => {
    const all = await taken([name]);

    expect(optionsIn(linesOf(usage(), name)).filter((option) => !all.includes(option))).toEqual([]);
  },
);

test('README.md calls nothing that is no command', () => {
  const names = [...list.matchAll(/^droplight (\S+)/gm)].map(([, name = '']) => name);

  expect(
    names.filter(
      (name) => !['start', 'resume', 'replay', '', ...Object.keys(commands)].includes(name),
    ),
  ).toEqual([]);
});
