import { Box } from 'ink';
import type { Screen } from '../app/screen.ts';
import { settingLines } from '../app/update-settings.ts';
import type { Settings } from '../core/settings.ts';
import { bindings } from '../app/bindings.ts';
import type { Mode } from '../app/asking.ts';
import { Choices, Line } from './parts.tsx';

type SettingsProps = {
  readonly settings: Settings;
  readonly screen: Extract<Screen, { kind: 'settings' }>;
  readonly rows: number;
};

export function SettingsBody({ settings, screen, rows }: SettingsProps) {
  const choices = settingLines.map((line, index) => {
    const typing = index === screen.cursor && screen.typed !== undefined;
    const value = typing ? `${screen.typed}_` : settings[line.key] || '-';
    return { id: line.key, label: `${line.label}: ${value}` };
  });
  return (
    <Box flexDirection="column" paddingTop={1}>
      <Choices choices={choices} cursor={screen.cursor} rows={rows} />
    </Box>
  );
}

/** The page of keys for the screen it was asked from, out of the keymap itself. */
export function KeysBody({ mode }: { readonly mode: Mode }) {
  const rows = bindings.filter(({ modes }) => modes === 'all' || modes.includes(mode));
  return (
    <Box paddingX={1} flexDirection="column">
      {rows.map(({ keys, about, command }) => (
        <Line key={`${command} ${keys.join(' ')}`}>{`${keys.join(' ').padEnd(14)} ${about}`}</Line>
      ))}
    </Box>
  );
}
