/** What a person chooses once. Units are for typing and showing; files keep what was typed. */
export type Settings = {
  readonly units: 'us' | 'metric';
  /** Height of the usual place of work, as typed with its unit; empty when not set. */
  readonly altitude: string;
  readonly who: string;
  /** Folder for new sessions; empty means `sessions` in the current folder. */
  readonly sessions: string;
  readonly theme: 'day' | 'night';
  /** Whose next step stands on the walk: the tree's own, or the one with the fewest minutes to expect. */
  readonly lead: 'tree' | 'quicker';
};

export const defaultSettings: Settings = {
  units: 'us',
  altitude: '',
  who: '',
  sessions: '',
  theme: 'day',
  lead: 'tree',
};

/** Settings from whatever a file holds: a strange value counts as not there, one by one. */
export function parseSettings(value: unknown): Settings {
  const found = typeof value === 'object' && value !== null ? value : {};
  const text = (key: keyof Settings): string => {
    const one: unknown = Object.hasOwn(found, key) ? found[key as keyof typeof found] : undefined;
    return typeof one === 'string' && one.length <= 500 ? one : defaultSettings[key];
  };
  return {
    units: text('units') === 'metric' ? 'metric' : 'us',
    lead: text('lead') === 'quicker' ? 'quicker' : 'tree',
    theme: text('theme') === 'night' ? 'night' : 'day',
    altitude: text('altitude'),
    who: text('who'),
    sessions: text('sessions'),
  };
}
