import type { Story } from '../../session/story.ts';
import { heading, type Block } from '../block.ts';
import { sentence } from '../words/wording.ts';

/** Fewer parts than these are told in the story alone. */
const fewest = 3;

/** What came off: its bag, where it was put, what held it, how its hoses ran, and whether it is back. */
export function apartBlocks({ entries, partsOff }: Story): readonly Block[] {
  const off = entries.flatMap(({ event, said }) =>
    said?.kind === 'part-off' ? [{ n: event.n, ...said }] : [],
  );
  if (off.length < fewest) return [];
  const rows = off.map(({ n, part, bag, where = '', fasteners = '', routing = '' }) => [
    bag === undefined ? 'none' : String(bag),
    sentence(part).replace(/\.$/, ''),
    where,
    fasteners,
    routing,
    partsOff.some((one) => one.n === n) ? 'still off' : 'back on',
  ]);
  return [
    heading('What came off'),
    {
      kind: 'table',
      head: ['Bag', 'Part', 'Put where', 'Held by', 'Hoses and wires', 'Now'],
      rows,
    },
  ];
}
