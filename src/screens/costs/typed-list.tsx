import { ListHead } from '../forms/list-head.tsx';
import { Box } from 'ink';
import type { Typing } from '../../app/typing/typing.ts';
import { shownTyping } from '../field.tsx';
import { Choices, Head, Line } from '../parts.tsx';
import { allRowsOf } from '../room.ts';

type TypedListProps = {
  readonly title: string;
  /** What is so, over the lines. */
  readonly facts: readonly string[];
  readonly lines: readonly { readonly words: string; readonly about: string }[];
  readonly screen: { readonly cursor: number; readonly typed?: Typing };
  readonly rows: number;
  readonly columns: number;
};

/** A list some lines of which are typed in; what the marked one wants stands below. */
export function TypedList({ title, facts, lines, screen, rows, columns }: TypedListProps) {
  const choices = lines.map(({ words }, at) => ({
    id: `${at}`,
    label:
      at === screen.cursor && screen.typed !== undefined
        ? `${words.replace(/(?<=:) .*$/, '')} ${shownTyping(screen.typed)}`
        : words,
  }));
  return (
    <Box flexDirection="column">
      <ListHead title={title} facts={facts} />
      <Choices
        choices={choices}
        cursor={screen.cursor}
        rows={rows - 3 - allRowsOf(facts, columns - 2)}
      />
      <Head>
        <Line wrap="fold">{lines[screen.cursor]?.about ?? 'Mark a line by its number.'}</Line>
      </Head>
    </Box>
  );
}
