import { inSpan, span } from '../span.ts';

/**
 * Saturation line of water and steam, region 4 of IAPWS-IF97 (2007 revised release): its ten
 * constants and two closed forms, from memory, reproduced against the release's check values.
 */
const [n1, n2, n3, n4, n5] = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333,
];
const [n6, n7, n8, n9, n10] = [
  14.91510861353, -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
];

const kelvins = span('temperature', 273.15, 647.096, 'K');
const megapascals = span('pressure', 0.0006112, 22.064, 'MPa');

/** Pressure in MPa at which water boils at a temperature in K. Worked example: 300 K: 0.00353658941. */
export function saturationPressure(kelvin: number): number {
  const reduced = inSpan(kelvin, kelvins) + n9 / (kelvin - n10);
  const a = reduced ** 2 + n1 * reduced + n2;
  const b = n3 * reduced ** 2 + n4 * reduced + n5;
  const c = n6 * reduced ** 2 + n7 * reduced + n8;
  return ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4;
}

/** Temperature in K at which water boils under a pressure in MPa. Worked example: 0.1: 372.755919. */
export function saturationTemperature(pressure: number): number {
  const beta = inSpan(pressure, megapascals) ** 0.25;
  const e = beta ** 2 + n3 * beta + n6;
  const f = n1 * beta ** 2 + n4 * beta + n7;
  const g = n2 * beta ** 2 + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2;
}
