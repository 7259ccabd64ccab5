import { workerAt, type Story } from '../../core/session/story.ts';
import type { Settings } from '../../core/settings.ts';
import { show, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import type { Page } from '../page.ts';
import { home, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { typing } from '../typing/typing.ts';
import { afterAction } from './answer.ts';

export type WorkerLine = { readonly id: string; readonly label: string };

/** Those who may be working: who did last, who did before, and who this machine is set up for. */
export function workerLines(
  story: Pick<Story, 'workers'>,
  { who }: Pick<Settings, 'who'>,
): readonly WorkerLine[] {
  const now = workerAt(story);
  const names = [...story.workers.map((one) => one.who).toReversed(), who.trim()];
  return [...new Set(names)]
    .filter((name) => name !== '')
    .map((name) => ({ id: name, label: name === now ? `${name}, as before` : name }));
}

/** Who works is told once a job knows any name: a person alone need not say so. */
export const asksWho = (story: Pick<Story, 'workers'>, settings: Settings): boolean =>
  workerLines(story, settings).length > 0;

/** A digit or Enter on a marked line says who it is; left, nobody said anything. */
export const workerPage: Page<'worker'> = {
  mode: () => 'worker',
  update: updateWorker,
  open: (state) => show(state, { kind: 'worker', cursor: -1 }),
  bindings: [
    {
      modes: ['worker'],
      keys: ['n'],
      command: 'new-name',
      hint: 'another name',
      about: 'somebody who is not on the list yet',
    },
  ],
};

function updateWorker(state: State, screen: At<'worker'>, press: KeyPress): Transition {
  const story = state.session?.story;
  if (story === undefined) return show(state, home);
  if (press.command === 'go-back') return show(state, walk);
  if (press.command === 'new-name')
    return show(state, {
      kind: 'walk',
      input: { kind: 'text', purpose: 'worker', typed: typing() },
    });
  const lines = workerLines(story, state.settings);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) });
  return line.id === workerAt(story)
    ? show(state, walk)
    : afterAction(takeAction(state, { do: 'worker', who: line.id }));
}
