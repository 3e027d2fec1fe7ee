// Closed box by its compliance ratio: system resonance and Q, and the volume for a wanted Q.
// R. H. Small, "Closed-Box Loudspeaker Systems", Parts I and II, J. Audio Eng. Soc. 20(10), 1972 and 21(1), 1973.
// Inductance is left out here; the response has it.
import {
  type BoxSettingInput,
  closedBoxSchema,
  closedBoxTargetSchema,
  type DriverParameters,
  firstRefusal,
} from '@gusset/contracts/acoustics';
import { type Refusal, refuse } from '@gusset/units';
import { airAt, REFERENCE_AIR } from './air.ts';
import { complianceRatio, effectiveDriverCount } from './build-network.ts';
import { qtsInCircuit } from './circuit-q.ts';
import { driverElements } from './driver-elements.ts';
import { cornerF3Hz, peakDb, peakHz } from './second-order.ts';

export type ClosedBoxSummary = {
  /** Stiffness of the air in the box over that of the suspension. */
  readonly alpha: number;
  readonly fcHz: number;
  /** Leak and absorption left out. */
  readonly qtc: number;
  /** With them, to first order. */
  readonly qtcWithLosses: number;
  readonly f3Hz: number;
  /** 0 = no rise above the flat part. */
  readonly peakDb: number;
  /** Null = no rise. */
  readonly peakHz: number | null;
};

/** System resonance, Q, corner and peak of drivers in a closed box of `netLitres`. */
export function closedBoxSummary(
  driver: DriverParameters,
  netLitres: number,
  setting: BoxSettingInput = {},
): ClosedBoxSummary | Refusal {
  const question = { ...setting, driver, netLitres };
  const parsed = closedBoxSchema.safeParse(question);
  if (!parsed.success) return firstRefusal(parsed.error, question);
  const { array, fillFactor, ql, qa, seriesOhm, air } = parsed.data;
  const chamber = { netLitres, fillFactor, ql, qa };
  const alpha = complianceRatio(chamber, array, driverElements(driver), airAt(air));
  return closedFigures(alpha, driver.fsHz, qtsInCircuit(driver, array, seriesOhm), chamber);
}

/** The same from the compliance ratio itself; alpha 0 is a baffle. */
export function closedFigures(
  alpha: number,
  fsHz: number,
  qts: number,
  { ql, qa }: { readonly ql: number | null; readonly qa: number | null },
): ClosedBoxSummary {
  const stiffening = Math.sqrt(1 + alpha);
  const qtc = qts * stiffening;
  const fcHz = fsHz * stiffening;
  // Only the share of the stiffness that is air loses by leak and absorption.
  const losses = (alpha / (1 + alpha)) * ((ql === null ? 0 : 1 / ql) + (qa === null ? 0 : 1 / qa));
  return {
    alpha,
    fcHz,
    qtc,
    qtcWithLosses: 1 / (1 / qtc + losses),
    f3Hz: cornerF3Hz(fcHz, qtc),
    peakDb: peakDb(qtc),
    peakHz: peakHz(fcHz, qtc),
  };
}

/** Net litres for a wanted system Q, losses left out; refused at or below the Q of the driver on its source. */
export function closedBoxVolumeForQ(
  driver: DriverParameters,
  qtc: number,
  setting: BoxSettingInput = {},
): { readonly netLitres: number; readonly alpha: number } | Refusal {
  const question = { ...setting, driver, qtc };
  const parsed = closedBoxTargetSchema.safeParse(question);
  if (!parsed.success) return firstRefusal(parsed.error, question);
  const { array, fillFactor, seriesOhm, air } = parsed.data;
  const qts = qtsInCircuit(driver, array, seriesOhm);
  const alpha = (qtc / qts) ** 2 - 1;
  if (!(alpha > 0)) {
    return refuse('qtc', {
      allowed: `above ${qts.toFixed(3)}`,
      got: qtc,
      why: 'a box can only raise the Q that the driver has in free air',
    });
  }
  const stiffer = airAt(air).stiffnessPa / REFERENCE_AIR.stiffnessPa;
  const apparentLitres = (effectiveDriverCount(array) * driver.vasLitres * stiffer) / alpha;
  return { netLitres: apparentLitres / fillFactor, alpha };
}
