// Every range of the acoustics inputs, once. The app's own schemas and the public `solve` document spell the fields
// differently and hold the same numbers.
import { quantity, wholeNumber } from './quantity.ts';

export const DRIVER_RANGES = {
  fsHz: quantity(5, 2_000, 'Hz'),
  qms: quantity(0.1, 200, ''),
  qes: quantity(0.02, 100, ''),
  vasLitres: quantity(0.01, 5_000, 'L'),
  sdCm2: quantity(1, 20_000, 'cm²'),
  reOhm: quantity(0.05, 200, 'Ω'),
  leMh: quantity(0, 100, 'mH'),
  l2Mh: quantity(0.0001, 100, 'mH'),
  r2Ohm: quantity(0.0001, 10_000, 'Ω'),
  xmaxMm: quantity(0.05, 200, 'mm'),
  peWatts: quantity(0.1, 20_000, 'W'),
  displacementLitres: quantity(0, 100, 'L'),
};

/** Of leaks, absorption and port flow. */
export const LOSS_Q = quantity(1, 100_000, '');

export const CHAMBER_RANGES = {
  netLitres: quantity(0.05, 20_000, 'L'),
  /** 1.4 is the limit of air kept at one temperature. */
  fillFactor: quantity(1, 1.4, ''),
};

export const PORT_RANGES = {
  diameterMm: quantity(5, 1_000, 'mm'),
  slotSideMm: quantity(5, 3_000, 'mm'),
  flareRadiusMm: quantity(0, 500, 'mm'),
  count: wholeNumber(1, 50),
  lengthMm: quantity(1, 5_000, 'mm'),
  tuningHz: quantity(5, 500, 'Hz'),
};

export const RADIATOR_RANGES = {
  count: wholeNumber(1, 20),
  fsHz: quantity(1, 500, 'Hz'),
  qms: quantity(0.1, 200, ''),
  vasLitres: quantity(0.01, 5_000, 'L'),
  sdCm2: quantity(1, 20_000, 'cm²'),
  addedMassGrams: quantity(0, 20_000, 'g'),
  xmaxMm: quantity(0.05, 300, 'mm'),
};

export const AIR_RANGES = {
  temperatureC: quantity(-50, 70, '°C'),
  pressurePa: quantity(30_000, 120_000, 'Pa'),
};

export const SOURCE_RANGES = {
  voltageVrms: quantity(0.001, 1_000, 'V'),
  outputOhm: quantity(0, 1_000, 'Ω'),
  cableOhm: quantity(0, 100, 'Ω'),
  maxVoltageVrms: quantity(0.001, 1_000, 'V'),
  maxCurrentArms: quantity(0.001, 1_000, 'A'),
};

export const ARRAY_RANGES = {
  drivers: wholeNumber(1, 64),
  couplingLitres: quantity(0.001, 1_000, 'L'),
};

export const FREQUENCY_HZ = quantity(1, 20_000, 'Hz');

export const FILTER_RANGES = {
  order: wholeNumber(1, 8),
  gainDb: quantity(-40, 40, 'dB'),
  q: quantity(0.05, 50, ''),
};

export const CABIN_RANGES = {
  longestM: quantity(0.3, 20, 'm'),
  q: quantity(0.1, 10, ''),
  lowerHz: quantity(0.1, 500, 'Hz'),
  gainDb: quantity(-80, 80, 'dB'),
};

export const DISTANCE_M = quantity(0.05, 100, 'm');
