import { askedThing, causeName } from '../../account/words/wording.ts';
import type { Event, UnknownEvent } from '../../session/event.ts';
import { fold, step } from '../../session/fold.ts';
import { currentLeg, type Story } from '../../session/story.ts';
import { commonColumns, commonValues, type Row, type Table, type TableSession } from './table.ts';

/** What somebody chose to do, and what was asked of them then. */
export const decisionsTable: Table = {
  name: 'decisions',
  says: 'a step as it was chosen, beside the step that the screen asked then; what was taken back later too',
  columns: [
    ...commonColumns,
    { name: 'n', kind: 'integer', says: 'number of its event in the session' },
    { name: 'recorded', kind: 'time', says: 'when it was recorded' },
    { name: 'who', kind: 'text', says: 'who worked then; may be empty' },
    { name: 'tree', kind: 'text', says: 'id of the tree that was walked' },
    { name: 'step', kind: 'text', says: 'check, repair, proof or skip' },
    { name: 'target', kind: 'text', says: 'id of the check or the cause' },
    { name: 'target_name', kind: 'text', says: 'the same in words' },
    { name: 'asked', kind: 'text', says: 'check, repair, proof, or none where nothing was asked' },
    { name: 'asked_target', kind: 'text', says: 'id of what was asked; null where nothing was' },
    { name: 'followed', kind: 'flag', says: "the step is the one that the tree's own way asked" },
    { name: 'stands', kind: 'flag', says: 'it was not taken back later' },
  ],
  rows: (session) => {
    const rows: Row[] = [];
    const standing = new Set(
      session.story.entries.flatMap(({ event, said }) => (said === undefined ? [] : [event.n])),
    );
    let before = fold(session.header, []);
    for (const event of session.events) {
      const row = decisionIn(session, before, event, standing);
      if (row !== undefined) rows.push(row);
      before = step(before, event);
    }
    return rows;
  },
};

type Step = { readonly step: string; readonly target: string };

function stepOf(event: Event | UnknownEvent): Step | undefined {
  switch (event.kind) {
    case 'found':
    case 'unsure':
      return { step: 'check', target: event.check };
    case 'proved':
      return { step: 'proof', target: event.check };
    case 'skipped':
      return { step: 'skip', target: event.check };
    case 'repaired':
      return { step: 'repair', target: event.cause };
    default:
      return undefined;
  }
}

/** What the tree's own way asked, as a step. */
function askedIn(story: Story): Step | undefined {
  const { due } = story;
  if (due.kind === 'check') return { step: 'check', target: due.check };
  if (due.kind === 'named' || due.kind === 'repair') return { step: 'repair', target: due.cause };
  if (due.kind === 'proof')
    return { step: 'proof', target: currentLeg(story).tree.complaint.confirm };
  return undefined;
}

function decisionIn(
  session: TableSession,
  before: Story,
  event: Event | UnknownEvent,
  standing: ReadonlySet<number>,
): Row | undefined {
  const chosen = stepOf(event);
  if (chosen === undefined) return undefined;
  const asked = askedIn(before);
  return {
    ...commonValues(session),
    n: event.n,
    recorded: event.at,
    who: before.workers.at(-1)?.who ?? '',
    tree: currentLeg(before).tree.id,
    ...chosen,
    target_name:
      chosen.step === 'repair'
        ? causeName(before, chosen.target)
        : askedThing(before, chosen.target),
    asked: asked?.step ?? 'none',
    asked_target: asked?.target ?? null,
    followed: asked?.step === chosen.step && asked.target === chosen.target,
    stands: standing.has(event.n),
  };
}
