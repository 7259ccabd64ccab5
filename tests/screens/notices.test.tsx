import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { State } from '../../src/app/state.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { everyScreen, moreScreens } from '../helpers/every-screen.ts';
import { strike } from '../helpers/by-keys.ts';

/** As long as a message with its mending half is. */
const words =
  'This can be judged only after "Volts lost from the posts to the bulkhead, engine side" has shown good. Make that check first: "bulk-engine-volts".';
const noticed = (state: State): State => ({ ...state, notice: { kind: 'problem', text: words } });

const drawn = (state: State, columns: number, rows: number): string =>
  renderToString(<ScreenFrame state={state} columns={columns} rows={rows} contents={contents} />, {
    columns,
  });
/** Words without their folds, without the code they stand beside, and what stands at the right end of their first row. */
const flat = (text: string): string =>
  text.replaceAll(/^[█▀▄ ]{37} /gm, '').replaceAll(/kept \d\d:\S\S|keeping\.\.\.|\s/g, '');

test.each([...everyScreen, ...moreScreens])(
  'on the $name screen a notice is whole at 60 by 20, or ends in "…" and opens with i',
  ({ reach }) => {
    const program = reach();
    const state = noticed(program.state());
    const at = drawn(state, 60, 20);
    if (flat(at).includes(flat(words))) return;

    expect(at.split('\n').length).toBeLessThanOrEqual(20);
    expect(at).toMatch(/This can be judged only.*…/);
    expect(flat(drawn(strike(state, 'i', { columns: 60, rows: 20 }), 60, 20))).toContain(
      flat(words),
    );
  },
);
