import { bad, firstOf, good, type Parsed } from '../../core/problem.ts';
import { ledgerWords } from '../../core/account/blocks/ledger.ts';
import { partsTotalWords, passedWords, shortMinutes } from '../../core/session/costs/words.ts';
import { measured } from '../../core/session/costs/limit.ts';
import { costsOf } from '../../core/session/costs/costs.ts';
import { partWords } from '../../core/session/costs/parts.ts';
import type { Action } from '../../core/session/action.ts';
import type { Story } from '../../core/session/story.ts';
import { showMoney } from '../../core/trade/money/money.ts';
import { object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import { steps } from '../keys/walk.ts';
import type { Page } from '../page.ts';
import { noMinutes, parseMinutes } from '../typing/minutes.ts';
import { home, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { edited, edits } from '../typing/edit.ts';
import { textOf, typing, type Typing } from '../typing/typing.ts';

/** A line of the page: one that is typed in says what its words become. */
type CostLine = {
  readonly words: string;
  readonly about: string;
  readonly typed?: { readonly known: string; readonly action: (text: string) => Parsed<Action> };
};

/** What the job takes in one line each, over the lines that can be typed in. */
export function costFacts(story: Story): readonly string[] {
  const spent = measured(story);
  const passed = passedWords(spent);
  return [
    `Time    ${ledgerWords(story) || 'under a minute'}`,
    `Parts   ${partsTotalWords(costsOf(story))}`,
    ...(passed === '' ? [] : [`Limit   passed: ${passed}. Stop and ask.`]),
  ];
}

/** What can be noted, then every part that was. */
export const costLines = (story: Story): readonly CostLine[] => [
  {
    words: 'Note a part bought apart from a repair:',
    about: '2 x fuse link at 3.50 EUR, spare (or: fitted, consumable).',
    typed: { known: '', action: (part) => good({ do: 'part-bought', part }) },
  },
  ...limitLines(story),
  ...costsOf(story).lines.map(({ name, count, each, sum, use, cause }) => ({
    words: `${partWords({ name, count, each, use })}${sum === undefined ? '' : ` = ${showMoney(sum)}`}`,
    about:
      cause === undefined
        ? 'Bought apart; t, the history, takes it back.'
        : 'Noted with its repair: m says it anew.',
  })),
];

/** What is agreed of the limit, each part a line: emptied, there is no such limit any more. */
function limitLines({ limit }: Story): readonly CostLine[] {
  const { minutes, money = '', replace = '' } = limit ?? {};
  const time = minutes === undefined ? '' : shortMinutes(minutes);
  return [
    {
      words: `Limit of time: ${time || '-'}`,
      about: 'Minutes, or hours and minutes: 90, 2 h, 1:30. Agreed before anything is opened.',
      typed: { known: time, action: limitOfTime },
    },
    {
      words: `Limit of money: ${money || '-'}`,
      about: 'Parts and repairs as they are entered: 200 EUR.',
      typed: { known: money, action: (text) => good({ do: 'limit', money: text }) },
    },
    {
      words: `May be replaced without asking: ${replace || '-'}`,
      about: 'In their words: gaskets, hoses, fuses.',
      typed: { known: replace, action: (text) => good({ do: 'limit', replace: text }) },
    },
  ];
}

function limitOfTime(text: string): Parsed<Action> {
  const minutes = text === '' ? 0 : parseMinutes(text);
  return minutes === undefined ? bad(noMinutes(text)) : good({ do: 'limit', minutes });
}

export const costsPage: Page<'costs'> = {
  mode: ({ typed }) => (typed === undefined ? 'list' : 'text'),
  open: (state) => show(state, { kind: 'costs', cursor: 0 }),
  update,
  bindings: [
    {
      modes: [...steps, 'closed'],
      keys: ['M'],
      command: 'costs',
      about: 'money and time: the limit, what was agreed, parts bought, what they come to',
    },
  ],
};

function update(state: State, screen: At<'costs'>, press: KeyPress): Transition {
  const story = state.session?.story;
  if (story === undefined) return show(state, home);
  const lines = costLines(story);
  if (screen.typed !== undefined) return updateTyped(state, screen, screen.typed, press);
  if (press.command === 'go-back') return show(state, walk);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, {
      kind: 'costs',
      cursor: moved(screen.cursor, press.command, lines.length),
    });
  const at: At<'costs'> = { kind: 'costs', cursor: lines.indexOf(line) };
  return show(state, line.typed === undefined ? at : { ...at, typed: typing(line.typed.known) });
}

function updateTyped(
  state: State,
  screen: At<'costs'>,
  typed: Typing,
  press: KeyPress,
): Transition {
  const left: At<'costs'> = { kind: 'costs', cursor: screen.cursor };
  if (press.command === 'leave-field') return show(state, left);
  if (edits(press.command)) return show(state, { ...screen, typed: edited(typed, press) });
  const line = state.session && costLines(state.session.story)[screen.cursor];
  if (press.command !== 'choose' || line?.typed === undefined) return transition(state);
  const text = textOf(typed).trim();
  if (text === line.typed.known) return show(state, left);
  const action = line.typed.action(text);
  if (action.kind === 'bad') return object(state, firstOf(action.problems));
  const acted = takeAction(state, action.value);
  if (acted.outcome.kind === 'refused') return acted;
  return transition({ ...acted.state, screen: left }, ...acted.effects);
}
