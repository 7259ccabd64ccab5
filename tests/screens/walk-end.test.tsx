import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { makeProgram, press, startKeys } from '../helpers/program.ts';

test.each([80, 60])(
  'a complaint that leads on names the next one by its title, %i wide',
  (columns) => {
    const { program } = makeProgram();
    press(program, `${startKeys('no-supply')}y1<enter>`);
    const text = renderToString(
      <ScreenFrame state={program.state()} columns={columns} rows={20} contents={contents} />,
      { columns },
    ).replaceAll(/\s+/g, ' ');

    expect(text).toContain('ON TO ANOTHER COMPLAINT Lamps work, but the engine does not turn');
    expect(text).not.toContain('no-crank');
  },
);
