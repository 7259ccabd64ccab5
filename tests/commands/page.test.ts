import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { commandNamed, commands } from '../../src/commands/table.ts';
import { everyUse } from '../../src/commands/calls.ts';
import { everyCall } from '../../src/commands/help.ts';
import { verbs } from '../../src/commands/trees/verbs.ts';
import { runCommand } from '../helpers/commands.ts';

const page = readFileSync('src/guide/commands.md', 'utf8');
const from = page.indexOf('```\ndroplight');
const list = page.slice(from + 4, page.indexOf('```', from + 3));

const called: readonly (readonly string[])[] = [
  ...Object.keys(commands)
    .filter((name) => name !== 'trees')
    .map((name) => [name]),
  ...Object.keys(verbs).map((verb) => ['trees', verb]),
];

/** The options that a text tells, but for those of all commands. */
const optionsIn = (text: string): readonly string[] =>
  [...new Set([...text.matchAll(/--[a-z-]+/g)].map(([option]) => option))]
    .filter(
      (option) => !['--trees', '--sessions', '--help', '--version', '--nope'].includes(option),
    )
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
  'the page of commands tells the options that %s %s takes, and no others',
  async (...words) => {
    const told = linesOf(list, words.filter((word) => word !== undefined).join(' '));

    expect(told).not.toBe('');
    expect(optionsIn(told)).toEqual(await taken(words));
  },
);

test('the page of commands lists every call as "droplight help all" prints them: npm run readme writes it', () => {
  expect(list).toBe(everyCall());
  expect(page.slice(0, from)).toMatch(/^# Commands\n/);
  expect(page.split(everyCall())).toHaveLength(2);
});

test('the page of commands calls nothing that is no command', () => {
  const names = [...list.matchAll(/^droplight ([a-z]\S*)/gm)].map(([, name = '']) => name);

  expect(names.filter((name) => ![...Object.keys(everyUse), 'trees'].includes(name))).toEqual([]);
});
