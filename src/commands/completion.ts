import { bad } from '../core/problem.ts';
import { meant } from '../core/trade/units/nearest.ts';
import { figures } from '../core/trade/catalog.ts';
import { listSessions } from '../store/find.ts';
import { attempt } from '../store/files.ts';
import { loadHeadings } from '../store/headings.ts';
import { cleanRow } from '../core/text.ts';
import { everyUse } from './calls.ts';
import { done, type Ended, type Io } from './io.ts';
import {
  everywhere,
  readOptions,
  sessionsFolder,
  treesFolder,
  wrongUse,
  type Given,
} from './options.ts';
import { verbs } from './trees/verbs.ts';
import { callOf, type Named, type Use } from './uses.ts';

/** `droplight completion SHELL`: a few lines for the shell, which ask the program itself for words. */
export async function completion(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args);
  if (given.kind === 'bad') return given;
  const [shell, ...typed] = given.value.words;
  if (shell === undefined) return wrongUse('Say for which shell.', callOf('completion'));
  if (shell === 'words') {
    for (const word of wordsFor(io, given.value, typed)) io.out(`${cleanRow(word)}\n`);
    return done;
  }
  const script = Object.hasOwn(scripts, shell) ? scripts[shell] : undefined;
  if (script === undefined)
    return bad({
      code: 'unknown-shell',
      value: shell.slice(0, 40),
      message: `There is no completion for "${shell.slice(0, 40)}".`,
      mend: meant(shell, Object.keys(scripts)),
    });
  io.out(script);
  return done;
}

/** What may stand in the place of the last word typed, given those before it. */
function wordsFor(io: Io, given: Given, typed: readonly string[]): readonly string[] {
  const last = typed.at(-1) ?? '';
  // Some shells hand over an option with its value as one word, others as three.
  const [, option, value = ''] = /^(--[^=]+)=(.*)$/.exec(last) ?? [];
  if (option !== undefined)
    return wordsFor(io, given, [...typed.slice(0, -1), option, value]).map(
      (word) => `${option}=${word}`,
    );
  const before = typed.slice(0, -1).filter((word) => word !== '=');
  return candidates(io, given, { before, last: last === '=' ? '' : last })
    .filter((word) => word.startsWith(last === '=' ? '' : last))
    .toSorted();
}

type Typed = { readonly before: readonly string[]; readonly last: string };

function candidates(io: Io, given: Given, { before, last }: Typed): readonly string[] {
  const [name, verb] = wordsIn(before, everywhere);
  if (name === undefined)
    return last.startsWith('-') ? ['--help', '--plain', '--version'] : Object.keys(everyUse);
  const use = calledBy(name, verb);
  return use === undefined ? [] : wordsOf(io, given, use, { before, last });
}

/** What a command or verb takes there: the values of an option, its options, or what its words name. */
function wordsOf(io: Io, given: Given, use: Use, { before, last }: Typed): readonly string[] {
  const options = { ...everywhere, ...use.options };
  const open = /^--(.+)/.exec(before.at(-1) ?? '')?.[1];
  if (open !== undefined && (options[open] ?? 'flag') !== 'flag') return use.values?.[open] ?? [];
  if (last.startsWith('-')) return [...Object.keys(options), 'help'].map((one) => `--${one}`);
  const takes = takesMore.test(use.use) || isFirst(wordsIn(before, options), use);
  return use.words === undefined || !takes ? [] : named(io, given, use.words);
}

/** Whether no word stands behind the command yet, or behind the verb. */
const isFirst = (words: readonly string[], { use }: Use): boolean =>
  words.length === (/^trees \w/.test(use) ? 2 : 1);

/** A call that takes what its first word names as often as one likes. */
const takesMore = /^(?:trees )?\w+ \[?[A-Z]+\]?\.\.\./;

/** The words among what was typed: neither options nor the values of those that take one. */
const wordsIn = (typed: readonly string[], options: Use['options']): readonly string[] =>
  typed.filter((word, at) => !word.startsWith('-') && !takesValue(typed[at - 1] ?? '', options));

const takesValue = (word: string, options: Use['options']): boolean =>
  word.startsWith('--') && (options[word.slice(2)] ?? 'flag') !== 'flag';

/** How the command or verb is called that was typed; of `trees` alone, where no verb of it was. */
function calledBy(name: string, verb: string | undefined): Use | undefined {
  if (name === 'trees' && verb !== undefined && Object.hasOwn(verbs, verb)) return verbs[verb];
  return Object.hasOwn(everyUse, name) ? everyUse[name] : undefined;
}

function named(io: Io, given: Given, kind: Named): readonly string[] {
  switch (kind) {
    case 'tree':
      return loadHeadings(io.disk.files, treesFolder(io, given)).headings.map(({ id }) => id);
    case 'session': {
      const folder = sessionsFolder(io, given);
      const listed = attempt(folder, () => listSessions(io.disk.files, folder));
      return listed.kind === 'bad' ? [] : listed.value.map(({ name }) => name);
    }
    case 'figure':
      return figures.map(({ name }) => name);
    case 'command':
      return [...Object.keys(everyUse), 'all', 'keys'];
    case 'verb':
      return [...Object.keys(verbs), 'help'];
    case 'file':
      return [];
    default:
      return kind;
  }
}

/** Each shell hands over the words typed up to the cursor; where nothing is known, files are offered. */
const scripts: Readonly<Record<string, string>> = {
  bash: `_droplight() {
  local word
  COMPREPLY=()
  while IFS= read -r word; do COMPREPLY+=("$word"); done < <(
    droplight completion words -- "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null
  )
}
complete -o default -F _droplight droplight
`,
  zsh: `#compdef droplight
_droplight() {
  local -a found
  found=(\${(f)"$(droplight completion words -- "\${(@)words[2,CURRENT]}" 2>/dev/null)"})
  if (( \${#found} )); then compadd -- $found; else _files; fi
}
# In a folder of fpath this file is the function itself; sourced, behind compinit, it names it.
if [[ "\${funcstack[1]}" = _droplight ]]; then _droplight "$@"; else compdef _droplight droplight; fi
`,
  fish: `function __droplight_words
  set -l typed (commandline -opc) (commandline -ct)
  set -l found (droplight completion words -- $typed[2..] 2>/dev/null)
  if count $found >/dev/null
    printf '%s\\n' $found
  else
    __fish_complete_path (commandline -ct)
  end
end
complete -c droplight -f -a '(__droplight_words)'
`,
};
