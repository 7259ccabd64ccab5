import type { At } from '../app/screen.ts';
import { pace } from '../app/pages/replay-frames.ts';
import { eventWords } from '../core/account/clauses/clauses.ts';
import { clockTime } from '../core/session/clock.ts';
import type { Story } from '../core/session/story.ts';
import { Ends, Head, Line } from './parts.tsx';

type ReplayProps = { readonly story: Story; readonly screen: At<'replay'> };

/** Rows that stand above the step as it stood. */
export const replayRows = 2;

/** Above the step as it stood then: what had just been told, how far along, and what Enter does. */
export function ReplayHead({ story, screen }: ReplayProps) {
  const { at, recording, typed } = screen;
  const last = story.entries.at(-1);
  const told = last === undefined ? 'the beginning' : eventWords(story, last);
  const time = last === undefined ? '' : `${clockTime(last.event.at)} `;
  const turn = recording.turning.includes(at) ? 'ANOTHER LEADS  ' : '';
  return (
    <Head>
      <Ends
        left={`THEN  ${turn}${time}${told}`}
        right={`event ${at} of ${recording.events.length}`}
        as="marked"
      />
      <Line>
        {typed === '' ? doing(screen) : `Go to event or time: ${typed}_  Enter goes there.`}
      </Line>
    </Head>
  );
}

const doing = ({ playing, speed }: At<'replay'>): string =>
  playing
    ? `Goes on by itself, an event in ${pace(speed) / 1000} s.`
    : 'Enter: one on, or to the event or time typed before.';
