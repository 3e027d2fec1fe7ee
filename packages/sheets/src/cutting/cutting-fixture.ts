// For tests: the 600 × 380 × 320 box of 18 mm board, cut with the shop's usual saw.
import type { CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { boxResult, MDF } from '../box/box-fixture.ts';
import { type CuttingUpstream, cuttingSheet } from './cutting-sheet.ts';

export const CUTTING_FACTS: CuttingFacts = {
  boards: [MDF],
  saw: { kerfMm: 3.2, trimMm: 6, bladeMaxTiltDeg: 45 },
};

export const CUTTING_UPSTREAM: CuttingUpstream = { box: boxResult() };

export function cuttingOutcome(
  changes: Partial<CuttingInput> = {},
  facts: CuttingFacts = CUTTING_FACTS,
  upstream: CuttingUpstream = CUTTING_UPSTREAM,
) {
  return cuttingSheet.compute({ ...cuttingSheet.emptyInput(), ...changes }, facts, upstream);
}

/** The result, or a failed test that says why there is none. */
export function cuttingResult(...given: Parameters<typeof cuttingOutcome>): CuttingResult {
  const outcome = cuttingOutcome(...given);
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}
