import { readFileSync } from 'node:fs';

/** A row of the README's first ten minutes: the bytes that its keys send, and what the screen says then. */
export type Press = { readonly row: string; readonly keys: string; readonly says: string };

const named: Readonly<Record<string, string>> = { Enter: '\r', Space: ' ', Esc: '\x1b' };

/** `12.6` is typed as it stands; a word without marks is the name of a key. */
const keysOf = (cell: string): string =>
  [...cell.matchAll(/`([^`]+)`|(\S+)/g)]
    .map(([, typed, name = '']) => {
      const keys = typed ?? named[name];
      if (keys === undefined) throw new Error(`README.md: no key is called ${name}`);
      return keys;
    })
    .join('');

/** The rows of the first ten minutes, but for the one that starts the program. */
export function pressesIn(readme = readFileSync('README.md', 'utf8')): readonly Press[] {
  const part = readme.slice(readme.indexOf('## The first ten minutes'));
  const rows = part.slice(0, part.indexOf('\n## ', 1)).matchAll(/^\| (.+?) \| (.*?) ?\|$/gm);
  return [...rows]
    .filter(([, press = '']) => !/^(press|---|`npm start`.*)$/.test(press))
    .map(([, press = '', says = '']) => ({ row: press, keys: keysOf(press), says }));
}

/** What is typed where the README shows the screen: its picture is taken before Enter. */
export const pictured = '12.3';

/** A screen without its hours, which are others each time. */
export const withoutHours = (screen: string): string =>
  screen
    .replaceAll(/\b\d\d:\d\d\b/g, '10:42')
    .replaceAll(/\b\d\sh\s\d+\smin/g, '0\u00a0h\u00a02\u00a0min');
