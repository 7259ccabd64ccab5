/** What a person chooses once. Units are for typing and showing; files keep what was typed. */
export type Settings = {
  readonly units: 'us' | 'metric';
  /** Height of the usual place of work, as typed with its unit; empty when not set. */
  readonly altitude: string;
  readonly who: string;
  /** Folder of the sessions, whole from the root; empty means `sessions` in the current folder. */
  readonly sessions: string;
  /** The currency of prices typed without one, for new jobs: a code or a sign; empty when not set. */
  readonly currency: string;
  /** Whether the terminal rings when a timer has run out. */
  readonly bell: 'on' | 'off';
  readonly theme: 'day' | 'night';
  /** Whose next step stands on the walk: the tree's own, or the one with the fewest minutes to expect. */
  readonly lead: 'tree' | 'quicker';
  /** What an hour of work is worth, against the usual price of parts. */
  readonly hour: (typeof hourWorths)[number];
  /** Least chance, in percent, at which a repair is advised while a short check could still tell. */
  readonly sure: (typeof sureties)[number];
  /** Whether odds and minutes of the trees move to what was proven in the jobs of the sessions folder. */
  readonly ownJobs: 'off' | 'on';
};

export const hourWorths = ['half', 'usual', 'double'] as const;
export const sureties = ['70', '80', '90', '95'] as const;

export const defaultSettings: Settings = {
  units: 'us',
  altitude: '',
  who: '',
  sessions: '',
  currency: '',
  bell: 'on',
  theme: 'day',
  lead: 'tree',
  hour: 'usual',
  sure: '80',
  ownJobs: 'off',
};

function oneOf<Value extends string>(values: readonly Value[], found: string, usual: Value): Value {
  return values.find((value) => value === found) ?? usual;
}

/** A height that was typed as a bare number, with the unit it was typed in: units may turn, it may not. */
export const withUnit = (height: string, unit: 'ft' | 'm'): string =>
  /^[+-]?[\d.,\s]*\d$/.test(height.trim()) ? `${height.trim()} ${unit}` : height.trim();

/** Settings from whatever a file holds: a strange value counts as not there, one by one. */
export function parseSettings(value: unknown): Settings {
  const found = typeof value === 'object' && value !== null ? value : {};
  const text = (key: keyof Settings): string => {
    const one: unknown = Object.hasOwn(found, key) ? found[key as keyof typeof found] : undefined;
    return typeof one === 'string' && one.length <= 500 ? one : defaultSettings[key];
  };
  return {
    units: oneOf(['us', 'metric'], text('units'), defaultSettings.units),
    lead: oneOf(['tree', 'quicker'], text('lead'), defaultSettings.lead),
    theme: oneOf(['day', 'night'], text('theme'), defaultSettings.theme),
    altitude: withUnit(text('altitude'), text('units') === 'metric' ? 'm' : 'ft'),
    who: text('who'),
    currency: text('currency'),
    bell: oneOf(['on', 'off'], text('bell'), defaultSettings.bell),
    hour: oneOf(hourWorths, text('hour'), defaultSettings.hour),
    sure: oneOf(sureties, text('sure'), defaultSettings.sure),
    ownJobs: oneOf(['off', 'on'], text('ownJobs'), defaultSettings.ownJobs),
    sessions: text('sessions'),
  };
}
