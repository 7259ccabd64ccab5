import type { Mark } from '../figure.ts';

/** A limit in its unit; published where no mark is written. */
export type Limit = readonly [
  value: number,
  unit: string,
  about: string,
  source: string,
  mark?: Mark,
];

/** Limits and customary values that no formula gives, by name; each with its own source and mark. */
export const limits = {
  'garage-co-8h': [50, 'ppm', 'Carbon monoxide, 8 hours, workplace limit', 'OSHA'],
  'garage-co-8h-strict': [35, 'ppm', 'Carbon monoxide, 8 hours, recommended', 'NIOSH 1972'],
  'garage-co-ceiling': [200, 'ppm', 'Carbon monoxide, never more than this', 'NIOSH 1972'],
  'garage-co-danger': [
    1200,
    'ppm',
    'Carbon monoxide, at once dangerous to life',
    'NIOSH Pocket Guide',
    'from memory',
  ],
  'fuel-vapor-burns': [1.4, '%', 'Gasoline vapor in air, burns from here', 'a safety standard'],
  'fuel-vapor-burns-strict': [
    1.2,
    '%',
    'The same, most cautious figure in print',
    'a fire service article',
  ],
  'fuel-flash': [-50, 'F', 'Flash point of gasoline', 'a fire service article'],
  'hydrogen-burns': [4, '%', 'Hydrogen in air, burns from here', 'CCOHS prints 4.1 %'],
  'ballast-coil-ohms': [
    1.5,
    'ohm',
    'Primary of a coil made for a ballast, nominal',
    'common practice, no source',
    'common practice',
  ],
  'ballast-drop': [
    3,
    'V',
    'What a ballast drops, about',
    'common practice; a guide tells 12 to 9 V',
    'common practice',
  ],
  'advance-highest': [
    42,
    'deg',
    'Largest high-speed advance told in an army manual',
    'US Army TM 10-3930-623-12',
  ],
  'vacuum-timing-back-off': [
    0.375,
    'inHg',
    'Back off so much from the best vacuum when timing by gauge (0.25 to 0.5)',
    'US Army TM 9-4910-677-14&P',
  ],
  'cap-7-low': [6.25, 'psi', 'A 7 psi cap stays shut below', 'US Army TM 5-3895-359-14&P'],
  'cap-7-high': [7.5, 'psi', 'A 7 psi cap is open by', 'US Army TM 5-3895-359-14&P'],
  'cap-vacuum': [
    0.625,
    'psi',
    'The vacuum valve of a cap is open by',
    'US Army TM 5-3895-359-14&P',
  ],
} as const satisfies Readonly<Record<string, Limit>>;
