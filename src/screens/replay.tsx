import { Box } from 'ink';
import { ready, type Screen } from '../app/screen.ts';
import type { OpenSession } from '../app/state.ts';
import { eventWords } from '../core/account/clauses/event-words.ts';
import { clockTime } from '../core/session/clock.ts';
import { Ends } from './parts.tsx';
import { WalkBody } from './walk.tsx';

type ReplayProps = {
  readonly session: OpenSession;
  readonly screen: Extract<Screen, { kind: 'replay' }>;
  readonly rows: number;
  readonly columns: number;
};

/** The session as it stood, with what had just been told, drawn by the parts of the walk. */
export function ReplayBody({ session, screen, rows, columns }: ReplayProps) {
  const { at, replay, playing, speed } = screen;
  const last = session.story.entries.at(-1);
  const told = last === undefined ? 'the beginning' : eventWords(session.story, last);
  const time = last === undefined ? '' : `${clockTime(last.event.at)} `;
  const turning = replay.turning.includes(at) ? ' *turning point*' : '';
  return (
    <>
      <Box paddingX={1} flexDirection="column" flexShrink={0}>
        <Ends
          left={`REPLAY${turning}  ${time}${told}`}
          right={`${at} of ${replay.events.length}${playing ? `  x${speed}` : ''}`}
          as="marked"
        />
      </Box>
      <WalkBody
        story={session.story}
        input={ready}
        correcting={undefined}
        seen={0}
        rows={rows - 1}
        columns={columns}
      />
    </>
  );
}
