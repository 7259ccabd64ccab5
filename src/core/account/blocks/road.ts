import { clockTime } from '../../session/clock.ts';
import type { Entry } from '../../session/correct.ts';
import type { Story } from '../../session/story.ts';
import { heading, type Block } from '../block.ts';
import { sentence } from '../words/wording.ts';

/** The notes of the road test that stand, in the order in which they were taken down. */
export const roadNotes = ({ entries }: Pick<Story, 'entries'>): readonly RoadNote[] =>
  entries.flatMap(({ event, said }: Entry) =>
    said?.kind === 'noted' && said.on === 'road'
      ? [{ n: event.n, at: said.told ?? event.at, text: said.text.trim() }]
      : [],
  );

type RoadNote = { readonly n: number; readonly at: string; readonly text: string };

/** The road test as it was taken down, each line with its time; nothing where none was. */
export function roadBlocks(story: Story): readonly Block[] {
  const rows = roadNotes(story).map(({ at, text }) => [clockTime(at), sentence(text)]);
  return rows.length === 0
    ? []
    : [heading('On the road'), { kind: 'table', head: ['Time', 'What was seen'], rows }];
}
