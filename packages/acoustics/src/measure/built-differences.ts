// What a fitted box says beside its drawing: numbers and codes, the sentence is made in the view.
import type { BuiltDifference, Fitted } from '@gusset/contracts/measurement';
import { airAt } from '../air.ts';
import { apparentVolumeM3 } from '../chamber.ts';
import { closedFigures } from '../closed-box.ts';
import { totalQ } from '../driver-elements.ts';
import { portElements } from '../port.ts';
import type { OneChamberBox } from './box-impedance.ts';

/** A fitted box; the tuning, leak and free-air share are null for a closed one, which can't tell them. */
export type FoundBox = {
  readonly box: OneChamberBox;
  readonly netLitres: Fitted;
  /** The driver's resonance as a share of the stated one. */
  readonly freeAirShare: Fitted | null;
  readonly tuningHz: Fitted | null;
  readonly ql: Fitted | null;
  readonly residualPercent: number;
};

/** What a good shop builds to and a careful sweep can see; less is not worth a word. */
const TOLERANCE = {
  netShare: 0.03, // of the litres
  tuningShare: 0.02, // of the frequency: the portion that a 4 % volume moves
  portMm: 4, // a saw and a calliper, and end corrections known to 15 %
  resonanceShare: 0.03,
  systemQShare: 0.08,
  freeAirShare: 0.1, // suspensions drift by more than this before anyone should worry
} as const;
/** A leak Q below this is heard as a weak port (Small: 5 to 20, most often near 7). */
const LEAKY_Q = 5;

export function builtDifferences(drawn: OneChamberBox, found: FoundBox): BuiltDifference[] {
  const net = difference('net-volume', 'litres', drawn.chamber.netLitres, found.netLitres, (litres) =>
    Math.max(0.3, litres * TOLERANCE.netShare),
  );
  return drawn.port === null
    ? [net, ...closedDifferences(drawn, found)]
    : [net, ...ventedDifferences(drawn, found)];
}

function ventedDifferences(
  drawn: OneChamberBox,
  { box, netLitres, tuningHz, freeAirShare, ql }: FoundBox,
): BuiltDifference[] {
  if (drawn.port === null || box.port === null || tuningHz === null || freeAirShare === null || ql === null)
    return [];
  const air = airAt(drawn.air);
  const asDrawn = portElements(drawn.port, 'port', apparentVolumeM3(drawn.chamber), air).figures;
  const asBuilt = portElements(box.port, 'port', apparentVolumeM3(box.chamber), air).figures;
  // Leff goes as 1/(fb² V): the doubts of both, added as if apart.
  const doubt = Math.hypot((2 * tuningHz.plusMinus) / tuningHz.value, netLitres.plusMinus / netLitres.value);
  const length = { value: asBuilt.lengthMm, plusMinus: asBuilt.effectiveLengthMm * doubt };
  const stated = drawn.driver.fsHz;
  const free = { value: stated * freeAirShare.value, plusMinus: stated * freeAirShare.plusMinus };
  return [
    difference('tuning', 'Hz', asDrawn.tuningHz, tuningHz, (hz) => hz * TOLERANCE.tuningShare),
    difference('port-length', 'mm', asDrawn.lengthMm, length, () => TOLERANCE.portMm),
    {
      code: 'leak-q',
      unit: '',
      drawn: drawn.chamber.ql,
      built: ql,
      difference: drawn.chamber.ql === null ? null : ql.value - drawn.chamber.ql,
      beyond: ql.value + 2 * ql.plusMinus < LEAKY_Q,
    },
    difference('free-air', 'Hz', stated, free, (hz) => hz * TOLERANCE.freeAirShare),
  ];
}

function closedDifferences(drawn: OneChamberBox, found: FoundBox): BuiltDifference[] {
  const [asDrawn, asBuilt] = [figuresOf(drawn), figuresOf(found.box)];
  const netShare = found.netLitres.plusMinus / found.netLitres.value;
  const held = asBuilt.alpha / (2 * (1 + asBuilt.alpha)); // how much of the litres' doubt reaches fc and Q
  const fitted = (value: number): Fitted => ({ value, plusMinus: value * netShare * held });
  return [
    difference('resonance', 'Hz', asDrawn.fcHz, fitted(asBuilt.fcHz), (hz) => hz * TOLERANCE.resonanceShare),
    difference(
      'system-q',
      '',
      asDrawn.qtcWithLosses,
      fitted(asBuilt.qtcWithLosses),
      (q) => q * TOLERANCE.systemQShare,
    ),
  ];
}

function figuresOf({ driver, array, chamber, air }: OneChamberBox) {
  const stiffer = airAt(air).stiffnessPa / airAt({ temperatureC: 20, pressurePa: 101_325 }).stiffnessPa;
  const alpha = (array.count * driver.vasLitres * stiffer) / (chamber.netLitres * chamber.fillFactor);
  return closedFigures(alpha, driver.fsHz, totalQ(driver.qms, driver.qes), chamber);
}

/** `beyond`: past what the shop builds to, and past twice what the fit itself doubts. */
function difference(
  code: BuiltDifference['code'],
  unit: BuiltDifference['unit'],
  drawn: number,
  built: Fitted,
  tolerance: (drawn: number) => number,
): BuiltDifference {
  const by = built.value - drawn;
  return {
    code,
    unit,
    drawn,
    built,
    difference: by,
    beyond: Math.abs(by) > Math.max(tolerance(drawn), 2 * built.plusMinus),
  };
}
