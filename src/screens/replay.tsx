import type { At } from '../app/screen.ts';
import { eventWords } from '../core/account/clauses/clauses.ts';
import { clockTime } from '../core/session/clock.ts';
import type { Story } from '../core/session/story.ts';
import { Ends, Head } from './parts.tsx';

type ReplayProps = { readonly story: Story; readonly screen: At<'replay'> };

/** Above the step as it stood in a replay: what had just been told, and how far along that was. */
export function ReplayHead({ story, screen }: ReplayProps) {
  const { at, recording, playing, speed } = screen;
  const last = story.entries.at(-1);
  const told = last === undefined ? 'the beginning' : eventWords(story, last);
  const time = last === undefined ? '' : `${clockTime(last.event.at)} `;
  const turning = recording.turning.includes(at) ? ' *turning point*' : '';
  return (
    <Head>
      <Ends
        left={`REPLAY${turning}  ${time}${told}`}
        right={`${at} of ${recording.events.length}${playing ? `  x${speed}` : ''}`}
        as="marked"
      />
    </Head>
  );
}
