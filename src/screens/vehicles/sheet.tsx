import { Box } from 'ink';
import { pageLines } from '../../app/pages/vehicle.ts';
import type { At } from '../../app/screen.ts';
import type { State } from '../../app/state.ts';
import { shownTyping } from '../field.tsx';
import { Choices, Head, Line } from '../parts.tsx';

type VehicleProps = {
  readonly screen: At<'vehicle'>;
  readonly state: State;
  readonly rows: number;
};

/** What is known of one vehicle, a line each; what the marked one wants stands below. */
export function VehicleBody({ screen, state, rows }: VehicleProps) {
  const lines = pageLines(state, screen);
  const choices = lines.map(({ words: told }, at) => ({
    id: `${at}`,
    label:
      at === screen.cursor && screen.typed !== undefined
        ? `${told.replace(/(?<=[:?]) .*$/, '')} ${shownTyping(screen.typed)}`
        : told,
  }));
  return (
    <Box flexDirection="column">
      <Head>
        <Line as="title">{screen.vehicle.name === '' ? 'A new vehicle' : screen.vehicle.name}</Line>
      </Head>
      <Choices choices={choices} cursor={screen.cursor} rows={rows - 4} />
      <Head>
        <Line wrap="fold">{lines[screen.cursor]?.about ?? ''}</Line>
      </Head>
    </Box>
  );
}
