import { airPressureFigure, vacuumAtAltitude } from './air.ts';
import { batteryCharge, restedVoltage } from './battery-charge.ts';
import { chargingVoltage, hydrogen, standingDrain } from './battery-keep.ts';
import { crankingVoltage, loadTest, reserve } from './battery-load.ts';
import { coilCurrent, coilSecondary } from './coil.ts';
import {
  compressionAtAltitude,
  compressionSpread,
  crankingCompression,
  displacement,
} from './compression.ts';
import { convertFigure } from './convert-figure.ts';
import { boilingPointFigure, coolantFreeze, steamPressure, thermostat } from './cooling.ts';
import { dwell, sparkTiming, timingMark } from './dwell.ts';
import { cellSpread, electrolyte, hydrometerFigure, selfDischarge } from './electrolyte.ts';
import type { Figure } from './figure.ts';
import {
  fuelBoiling,
  fuelHeadFigure,
  fuelPump,
  fuelVapor,
  idleCo,
  needleForceFigure,
} from './fuel.ts';
import { lambda } from './lambda.ts';
import { chargeBalance, lampCurrent } from './lamps.ts';
import { leakage } from './leakage.ts';
import { mixture } from './mixture.ts';
import { brakeEffort, enginePower, roadSpeed, speedError, stopping, tireSize } from './road.ts';
import { garageCo, limit } from './safety.ts';
import { jointHeat, voltageDrop } from './wire-drop.ts';
import { fuseLink, meltingCurrent, meltingSize, meltingTime } from './wire-melt.ts';
import { wireCurrent, wireSize } from './wire-size.ts';
import { wireResistance } from './wire.ts';

/** Every trade figure there is, by family. The screen, the command and the trees use this list. */
export const figures: readonly Figure[] = [
  wireResistance,
  wireSize,
  voltageDrop,
  jointHeat,
  wireCurrent,
  fuseLink,
  meltingCurrent,
  meltingTime,
  meltingSize,
  batteryCharge,
  restedVoltage,
  electrolyte,
  hydrometerFigure,
  cellSpread,
  selfDischarge,
  loadTest,
  crankingVoltage,
  reserve,
  standingDrain,
  hydrogen,
  chargingVoltage,
  chargeBalance,
  lampCurrent,
  airPressureFigure,
  vacuumAtAltitude,
  crankingCompression,
  compressionAtAltitude,
  compressionSpread,
  leakage,
  displacement,
  dwell,
  timingMark,
  coilCurrent,
  coilSecondary,
  sparkTiming,
  lambda,
  mixture,
  idleCo,
  fuelPump,
  fuelHeadFigure,
  needleForceFigure,
  fuelVapor,
  fuelBoiling,
  boilingPointFigure,
  steamPressure,
  coolantFreeze,
  thermostat,
  roadSpeed,
  tireSize,
  speedError,
  stopping,
  brakeEffort,
  enginePower,
  garageCo,
  limit,
  convertFigure,
];

/** The figure of that name, or undefined. */
export function findFigure(name: string): Figure | undefined {
  return figures.find((figure) => figure.name === name);
}
