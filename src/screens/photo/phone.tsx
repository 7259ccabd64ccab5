import { Box, Text } from 'ink';
import { hints, keyName } from '../../app/keys/keymap.ts';
import type { Binding } from '../../app/keys/command.ts';
import { noticeNow } from '../../app/notice.ts';
import type { At } from '../../app/screen.ts';
import type { State } from '../../app/state.ts';
import { withoutFolder } from '../../app/wording.ts';
import { halfBlocks } from '../../core/drawing/half-blocks.ts';
import { shownTyping } from '../field.tsx';
import { Line } from '../parts.tsx';
import { endless } from '../plain/no-window.ts';
import type { Meaning } from '../theme.ts';

type PhoneProps = {
  readonly screen: At<'phone'>;
  readonly state: State;
  readonly bindings: readonly Binding[];
  readonly rows: number;
  readonly columns: number;
};

/** Columns that the words beside the code want. */
const beside = 20;

/** White on black whatever the theme: a telephone's camera reads dark on light. */
const Code = ({ rows }: { readonly rows: readonly string[] }) => (
  <Box flexDirection="column" flexShrink={0} marginRight={1}>
    {rows.map((row, index) => (
      // oxlint-disable-next-line react/no-array-index-key -- rows of a code may be alike, and never move
      <Text key={index} color="#ffffff" backgroundColor="#000000" wrap="truncate">
        {row}
      </Text>
    ))}
  </Box>
);

/** The whole window: a code to scan needs nearly all rows of a small one. */
export function PhoneBody({ screen, state, bindings, rows, columns }: PhoneProps) {
  const code = screen.door.kind === 'open' ? halfBlocks(screen.door.code, screen.turned) : [];
  const window = rows !== endless;
  const fits = window && code.length <= rows && (code[0]?.length ?? 0) + beside <= columns;
  return (
    <Box flexDirection="row" {...(window && { height: rows, overflow: 'hidden' as const })}>
      {fits && code.length > 0 ? <Code rows={code} /> : null}
      <Box flexDirection="column" flexShrink={1} flexGrow={1} paddingLeft={fits ? 0 : 1}>
        {wordsOf(screen, state, fits).map(([as, text]) => (
          <Box key={text} flexShrink={0}>
            <Line as={as} wrap="fold">
              {text}
            </Line>
          </Box>
        ))}
        <Box flexGrow={1} />
        {(window ? hints(bindings, state.question.mode) : []).map(({ key, hint }) => (
          <Box key={key} flexShrink={0}>
            <Line>{`${keyName(key)} ${hint}`}</Line>
          </Box>
        ))}
      </Box>
    </Box>
  );
}

type Words = readonly (readonly [as: Meaning, text: string])[];

function wordsOf({ door, asked, typed, taken }: At<'phone'>, state: State, fits: boolean): Words {
  const { left, right, as } = noticeNow(state);
  const [first] = asked;
  const caption: Words =
    first === undefined
      ? []
      : [
          ['plain', `What does ${withoutFolder(first.file)} show? May stay empty.`],
          ['marked', `> ${shownTyping(typed)}`],
        ];
  const came: Words = taken === 0 ? [] : [['plain', `Taken: ${taken}`]];
  const said: Words = left === '' ? [] : [[as, left]];
  return [
    ['title', 'FROM THE PHONE'],
    // A caption and what is said of it want the rows; the code stands beside them all the same.
    ...(first === undefined || !fits ? doorWords(door, fits) : []),
    ...came,
    ...caption,
    ...said,
    ['plain', right],
  ];
}

function doorWords(door: At<'phone'>['door'], fits: boolean): Words {
  if (door.kind === 'opening') return [['plain', 'Opening a page for it...']];
  if (door.kind === 'shut') return [['problem', door.why]];
  return [
    ['plain', fits ? 'Scan, or open there:' : 'No room for the code here. Open there:'],
    ['plain', door.url],
    ['plain', 'Plain HTTP: who is on this network could see it.'],
  ];
}
