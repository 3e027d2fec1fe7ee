// The single figures beside the curves: elements of the driver, ratios of the box, tunings.
import type { Chamber, Enclosure, SoundFigures, SoundSystem } from '@gusset/contracts/acoustics';
import type { Air } from './air.ts';
import { type BuiltNetwork, complianceRatio } from './build-network.ts';
import { arrayResistanceOhm, qtsInCircuit } from './circuit-q.ts';
import { type ClosedBoxSummary, closedFigures } from './closed-box.ts';
import { ventedF3Ratio } from './vented-box.ts';

export function soundFigures(system: SoundSystem, built: BuiltNetwork, air: Air): SoundFigures {
  const { driver } = built.network;
  const { outputOhm, cableOhm } = system.source;
  const qts = qtsInCircuit(system.driver, system.array, outputOhm + cableOhm);
  const rear = rearChamber(system.enclosure);
  const alpha = rear === null ? null : complianceRatio(rear, system.array, driver, air);
  const tuned = tunings(built);
  const closed = closedSide(system, qts, alpha);
  return {
    mmsGrams: driver.mmsKg * 1e3,
    cmsMmPerN: driver.cmsMPerN * 1e3,
    rmsNsPerM: driver.rmsNsPerM,
    blTm: driver.blTm,
    qts: driver.qts,
    qtsInCircuit: qts,
    rdcOhm: arrayResistanceOhm(system.driver, system.array),
    referenceEfficiencyPercent: driver.referenceEfficiency * 100,
    alpha,
    fcHz: closed?.fcHz ?? null,
    qtc: closed?.qtc ?? null,
    qtcWithLosses: closed?.qtcWithLosses ?? null,
    f3Hz: cornerHz(system, qts, alpha, closed, tuned.tuningHz),
    peakDb: isHighPass(system.enclosure) ? (closed?.peakDb ?? null) : null,
    ...tuned,
    ports: built.ports.map((port) => port.figures),
  };
}

function rearChamber(enclosure: Enclosure): Chamber | null {
  if (enclosure.kind === 'infinite-baffle') return null;
  return 'rear' in enclosure ? enclosure.rear : enclosure.chamber;
}

/** A closed rear: the resonance and Q that the drivers have on it. */
function closedSide(
  { enclosure, driver }: SoundSystem,
  qts: number,
  alpha: number | null,
): ClosedBoxSummary | null {
  switch (enclosure.kind) {
    case 'infinite-baffle':
      return closedFigures(0, driver.fsHz, qts, { ql: null, qa: null });
    case 'closed':
      return closedFigures(alpha ?? 0, driver.fsHz, qts, enclosure.chamber);
    case 'single-tuned-bandpass':
      return closedFigures(alpha ?? 0, driver.fsHz, qts, enclosure.rear);
    default:
      return null;
  }
}

function isHighPass(enclosure: Enclosure): boolean {
  return enclosure.kind === 'closed' || enclosure.kind === 'infinite-baffle';
}

/** -3 dB where the response is a high-pass of known order; a bandpass or a radiator has it in its curve only. */
function cornerHz(
  { enclosure, driver }: SoundSystem,
  qts: number,
  alpha: number | null,
  closed: ClosedBoxSummary | null,
  tuningHz: number | null,
): number | null {
  if (isHighPass(enclosure)) return closed?.f3Hz ?? null;
  if (enclosure.kind !== 'vented' || alpha === null || tuningHz === null) return null;
  const { ql } = enclosure.chamber;
  return (
    driver.fsHz * ventedF3Ratio({ qts, alpha, h: tuningHz / driver.fsHz, leak: ql === null ? 0 : 1 / ql })
  );
}

function tunings({ ports, radiator, radiatorTuningRadPerS }: BuiltNetwork) {
  const toHz = (radPerS: number | null) => (radPerS === null ? null : radPerS / (2 * Math.PI));
  return {
    tuningHz: ports[0]?.figures.tuningHz ?? toHz(radiatorTuningRadPerS),
    rearTuningHz: ports[1]?.figures.tuningHz ?? null,
    radiatorNotchHz: toHz(radiator?.notchRadPerS ?? null),
  };
}
