/** The settings in the order of the screen; those with values turn, the others are typed. */
export const settingLines = [
  { key: 'who', label: 'Who is working' },
  { key: 'altitude', label: 'Altitude of the workplace' },
  { key: 'units', label: 'Units when typing', values: ['us', 'metric'] },
  {
    key: 'lead',
    label: 'Walk leads by (tree: its own way; quicker: the advice)',
    values: ['tree', 'quicker'],
  },
  { key: 'theme', label: 'Theme', values: ['day', 'night'] },
  { key: 'sessions', label: 'Sessions folder' },
] as const;
