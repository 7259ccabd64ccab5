import { Box } from 'ink';
import type { Live } from '../app/state.ts';
import { currentLeg } from '../core/session/story.ts';
import { feedLine } from './feed.ts';
import { Line } from './parts.tsx';
import { quickerLine, suspectsLine } from './why.ts';
import { lastWords } from './wording.ts';

/** What stands under every step: the last finding, the suspects, a quicker step, what is apart. */
export function Foot({ live }: { readonly live: Live }) {
  const { story } = live;
  // Suspects belong to steps that look for a cause; a repair, a proof and an end have none to show.
  const asks = ['check', 'named', 'stop'].includes(story.step.kind);
  const { shop } = currentLeg(story);
  const apart = [
    ...story.open.map((id) => shop.accesses[id]?.name ?? id),
    ...story.partsOff.map(({ part }) => part),
  ];
  return (
    <Box paddingX={1} flexDirection="column">
      <Line>{`LAST      ${lastWords(story)}`}</Line>
      {asks && feedLine(live) !== '' ? <Line>{feedLine(live)}</Line> : null}
      {asks ? <Line>{suspectsLine(live)}</Line> : null}
      {asks && quickerLine(live) !== '' ? <Line>{quickerLine(live)}</Line> : null}
      {apart.length === 0 ? null : <Line>{`APART     ${apart.join('; ')}`}</Line>}
    </Box>
  );
}
