import { bad } from '../core/problem.ts';
import { didYouMean } from '../core/trade/units/nearest.ts';
import type { Command } from './io.ts';
import { screenUses, uses, type CommandName } from './uses.ts';

/** Every command but the screens, by the word that calls it; each is loaded when it is called. */
export const commands: Readonly<Record<CommandName, () => Promise<Command>>> = {
  sessions: async () => (await import('./sessions.ts')).sessions,
  open: async () => (await import('./open.ts')).open,
  practice: async () => (await import('./practice/practice.ts')).practice,
  vehicles: async () => (await import('./vehicles.ts')).vehicles,
  enter: async () => (await import('./enter.ts')).enter,
  story: async () => (await import('./story.ts')).story,
  write: async () => (await import('./write.ts')).write,
  review: async () => (await import('./review.ts')).review,
  verify: async () => (await import('./verify.ts')).verify,
  history: async () => (await import('./jobs/history.ts')).history,
  records: async () => (await import('./jobs/records.ts')).records,
  trees: async () => (await import('./trees/trees.ts')).trees,
  advise: async () => (await import('./advise.ts')).advise,
  feed: async () => (await import('./feed.ts')).feed,
  figure: async () => (await import('./figure.ts')).figure,
  help: async () => (await import('./help.ts')).help,
  completion: async () => (await import('./completion.ts')).completion,
};

const isCommand = (name: string): name is CommandName => Object.hasOwn(commands, name);

/** The command that a word calls; one that refuses, where it calls none. */
export async function commandNamed(name: string): Promise<Command> {
  return isCommand(name) ? commands[name]() : unknown(name);
}

const unknown =
  (name: string): Command =>
  async () => {
    const instead = didYouMean(name, Object.keys({ ...screenUses, ...uses }));
    return bad({
      code: 'unknown-command',
      value: name.slice(0, 40),
      message: `There is no command "${name.slice(0, 40)}".`,
      mend: `${instead}See "droplight help".`,
    });
  };
