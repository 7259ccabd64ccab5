import { showReading } from '../trade/units/units.ts';

/** Volts or amperes below which a meter at the vehicle shows nothing: one in its last place. */
const least = 0.001;

/** Volts or amperes of a feed path as a meter shows them: `12.65 V`, `0.003 V`, `0 A` for less than half a thousandth. */
export const onMeter = (value: number, unit: 'V' | 'A'): string =>
  showReading(Math.round(value / least) / (1 / least), unit);
