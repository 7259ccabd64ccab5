import { Box } from 'ink';
import { settingLines } from '../app/pages/settings.ts';
import type { At } from '../app/screen.ts';
import type { Settings } from '../core/settings.ts';
import { shownTyping } from './field.tsx';
import { Choices, Head, Line } from './parts.tsx';

type SettingsProps = {
  readonly settings: Settings;
  readonly screen: At<'settings'>;
  readonly rows: number;
};

export function SettingsBody({ settings, screen, rows }: SettingsProps) {
  const choices = settingLines.map((line, index) => {
    const typed = index === screen.cursor ? screen.typed : undefined;
    const value = typed === undefined ? settings[line.key] || '-' : shownTyping(typed);
    return { id: line.key, label: `${line.label}: ${value}` };
  });
  return (
    <Box flexDirection="column" paddingTop={1}>
      <Choices choices={choices} cursor={screen.cursor} rows={rows - 3} />
      <Head>
        <Line wrap="fold">{settingLines[screen.cursor]?.about ?? ''}</Line>
      </Head>
    </Box>
  );
}
