import { airPressureFigure, vacuumAtAltitude } from './figures/air.ts';
import { batteryCharge, restedVoltage } from './figures/battery/charge.ts';
import { chargingVoltage, hydrogen, standingDrain } from './figures/battery/keep.ts';
import { crankingVoltage, loadTest, reserve } from './figures/battery/load.ts';
import { chargeTime } from './figures/battery/charger.ts';
import { starterDraw } from './figures/battery/starter.ts';
import { coilCurrent, coilEnergy, coilSecondary, coilVolts } from './figures/coil.ts';
import {
  compressionAtAltitude,
  compressionSpread,
  crankingCompression,
  displacement,
} from './figures/compression.ts';
import { compressionRatio } from './figures/compression-ratio.ts';
import { convertFigure } from './figures/convert.ts';
import { boilingPointFigure, coolantFreeze, steamPressure, thermostat } from './figures/cooling.ts';
import { antifreezeTopUp } from './figures/antifreeze.ts';
import { fuelUse, pulleyRatio } from './figures/drive.ts';
import { dwell, sparkTiming, timingMark } from './figures/dwell.ts';
import {
  cellSpread,
  electrolyte,
  hydrometerFigure,
  selfDischarge,
} from './figures/battery/electrolyte.ts';
import type { Figure } from './figure.ts';
import {
  fuelBoiling,
  fuelHeadFigure,
  fuelPump,
  fuelVapor,
  idleCo,
  needleForceFigure,
} from './figures/fuel.ts';
import { lambda } from './figures/lambda.ts';
import { chargeBalance, lampCurrent } from './figures/lamps.ts';
import { leakage } from './figures/battery/leakage.ts';
import { mixture } from './figures/mixture.ts';
import { brakeEffort, enginePower, roadSpeed, speedError, stopping } from './figures/road.ts';
import { garageCo, limit } from './figures/safety.ts';
import { loadSum, ohmsLaw } from './figures/ohm.ts';
import { distributorArc, sparkRate } from './figures/sparks.ts';
import { tireSize } from './figures/tires.ts';
import { wireDerating } from './figures/wire/bundle.ts';
import { jointHeat, voltageDrop } from './figures/wire/drop.ts';
import { fuseLink, meltingCurrent, meltingSize, meltingTime } from './figures/wire/melt.ts';
import { wireCurrent, wireSize } from './figures/wire/size.ts';
import { wireResistance } from './figures/wire/wire.ts';

/** Every trade figure there is, by family. The screen, the command and the trees use this list. */
export const figures: readonly Figure[] = [
  wireResistance,
  wireSize,
  voltageDrop,
  jointHeat,
  wireCurrent,
  wireDerating,
  ohmsLaw,
  loadSum,
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
  starterDraw,
  chargeTime,
  reserve,
  standingDrain,
  hydrogen,
  chargingVoltage,
  chargeBalance,
  pulleyRatio,
  lampCurrent,
  airPressureFigure,
  vacuumAtAltitude,
  crankingCompression,
  compressionAtAltitude,
  compressionSpread,
  compressionRatio,
  leakage,
  displacement,
  dwell,
  timingMark,
  distributorArc,
  coilCurrent,
  coilSecondary,
  coilVolts,
  coilEnergy,
  sparkRate,
  sparkTiming,
  lambda,
  mixture,
  idleCo,
  fuelPump,
  fuelHeadFigure,
  needleForceFigure,
  fuelVapor,
  fuelBoiling,
  fuelUse,
  boilingPointFigure,
  steamPressure,
  coolantFreeze,
  antifreezeTopUp,
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
