import { renderToString } from 'ink';
import wrapAnsi from 'wrap-ansi';
import type { State } from '../../app/state.ts';
import { clean, cleanRow } from '../../core/text.ts';
import { ThemeContext } from '../parts.tsx';
import { meanings, type Meaning, type Theme } from '../theme.ts';
import { Body } from '../views.tsx';
import { endless, NoWindow } from './no-window.ts';

/** No color and no weight: a word or a mark says everything that one of them would. */
const bare: Theme = Object.fromEntries(meanings.map((meaning) => [meaning, {}])) as Record<
  Meaning,
  object
>;

/** What the screen shows between head and foot, whole, as lines that are no wider than so many columns. */
export function bodyLines(state: State, columns: number): readonly string[] {
  const shown = renderToString(
    <ThemeContext value={bare}>
      <NoWindow value={true}>
        <Body state={state} rows={endless} columns={columns} />
      </NoWindow>
    </ThemeContext>,
    { columns },
  );
  const lines = clean(shown)
    .split('\n')
    .map((line) => line.trimEnd());
  // A blank line parts two others, and nothing else.
  return lines.filter((line, at) => line !== '' || (lines[at - 1] ?? '') !== '');
}

/** A text of one paragraph, folded. */
export const foldedText = (text: string, columns: number): readonly string[] =>
  wrapAnsi(cleanRow(text), columns, { trim: true, hard: true }).split('\n');
