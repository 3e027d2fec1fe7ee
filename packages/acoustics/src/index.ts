export { type Air, airAt, pressureAtAltitudePa, REFERENCE_AIR } from './air.ts';
export { cabinCornerHz } from './cabin.ts';
export { arrayResistanceOhm, qtsInCircuit } from './circuit-q.ts';
export { type ClosedBoxSummary, closedBoxSummary, closedBoxVolumeForQ } from './closed-box.ts';
export { type Contradiction, type DerivedDriver, type DerivedField, deriveDriver } from './derive-driver.ts';
export { type DriverElements, driverElements } from './driver-elements.ts';
export { solveResponse } from './response.ts';
export { soundVerdict } from './sound-verdict.ts';
export { type VentedAlignment, ventedAlignment } from './vented-box.ts';
