// A whole driver from any sufficient part of a data sheet, and what on that sheet contradicts itself.
// The links between the figures (Small 1972), with z = ws Mms = 1/(ws Cms), the impedance of mass at resonance:
//   z = ws Mms      z = 1/(ws Cms)      Vas = rho c² Sd² Cms
//   Qms = z/Rms     Qes = z Re/(n BL²)     Qts = Qms Qes/(Qms + Qes)
// Whatever is given of fs, Qms, Qes, Vas, Sd and Re is taken; the rest of the six follows from the other figures.
// Every figure that was given is then compared with what the six imply. Nothing is averaged.
import {
  type DriverDataSheet,
  type DriverDataSheetInput,
  type DriverParameters,
  driverDataSheetSchema,
  driverParametersSchema,
  firstRefusal,
  LINKED_DRIVER_FIELDS,
  type LinkedDriverField,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { REFERENCE_AIR } from './air.ts';
import { driverElements } from './driver-elements.ts';

/** Data sheets round; further apart than this, two figures can't both be right. */
const CONTRADICTION_PERCENT = 5;

export type DerivedField = {
  readonly field: LinkedDriverField;
  readonly value: number;
};

export type Contradiction = {
  readonly field: LinkedDriverField;
  readonly given: number;
  /** What fs, Q, Vas, Sd and Re together say. */
  readonly implied: number;
  /** Given above implied, in percent of implied; negative = below. */
  readonly percent: number;
};

export type DerivedDriver = {
  readonly driver: DriverParameters;
  /** Figures that weren't given, from those that were. */
  readonly derived: readonly DerivedField[];
  readonly contradictions: readonly Contradiction[];
  /** Fields that weren't given and that nothing implies; taken as 0. */
  readonly takenAsZero: readonly ('leMh' | 'displacementLitres')[];
};

const BASIS = ['fsHz', 'qms', 'qes', 'vasLitres', 'sdCm2', 'reOhm'] as const;

/** Figures in SI, by name; `z` is in N s/m. Absent = not known yet. */
type Known = { [Name in LinkedDriverField | 'z']?: number };

/** The driver that a data sheet describes, or which figure is still missing. */
export function deriveDriver(sheet: DriverDataSheetInput): DerivedDriver | Refusal {
  const parsed = driverDataSheetSchema.safeParse(sheet);
  if (!parsed.success) return firstRefusal(parsed.error, sheet);
  const given = parsed.data;
  const basis = completeBasis(given);
  if (isRefusal(basis)) return basis;
  const candidate = {
    ...basis,
    leMh: given.leMh ?? 0,
    l2Mh: given.l2Mh,
    r2Ohm: given.r2Ohm,
    coils: given.coils,
    xmaxMm: given.xmaxMm,
    peWatts: given.peWatts,
    displacementLitres: given.displacementLitres ?? 0,
  };
  const driver = driverParametersSchema.safeParse(candidate);
  if (!driver.success) return firstRefusal(driver.error, candidate);
  const implied = impliedFigures(driver.data);
  return {
    driver: driver.data,
    derived: LINKED_DRIVER_FIELDS.filter((field) => given[field] === null).map((field) => ({
      field,
      value: implied[field],
    })),
    contradictions: LINKED_DRIVER_FIELDS.flatMap((field) =>
      contradiction(field, given[field], implied[field]),
    ),
    takenAsZero: (['leMh', 'displacementLitres'] as const).filter((field) => given[field] === null),
  };
}

function contradiction(field: LinkedDriverField, given: number | null, implied: number): Contradiction[] {
  if (given === null) return [];
  const percent = (given / implied - 1) * 100;
  return Math.abs(percent) > CONTRADICTION_PERCENT ? [{ field, given, implied, percent }] : [];
}

type Basis = Pick<DriverParameters, (typeof BASIS)[number]>;

function completeBasis(given: DriverDataSheet): Basis | Refusal {
  const overdamped = refuseTotalQ(given);
  if (overdamped !== null) return overdamped;
  const known = toSi(given);
  spread(known, given.coils);
  const { fsHz, qms, qes, vasLitres, sdCm2, reOhm } = known;
  if (
    fsHz === undefined ||
    qms === undefined ||
    qes === undefined ||
    vasLitres === undefined ||
    sdCm2 === undefined ||
    reOhm === undefined
  ) {
    return refuseMissing(known);
  }
  return {
    fsHz: given.fsHz ?? fsHz,
    qms: given.qms ?? qms,
    qes: given.qes ?? qes,
    vasLitres: given.vasLitres ?? vasLitres * 1e3,
    sdCm2: given.sdCm2 ?? sdCm2 * 1e4,
    reOhm: given.reOhm ?? reOhm,
  };
}

const ENOUGH: Readonly<Record<(typeof BASIS)[number], string>> = {
  fsHz: 'fsHz, or mmsGrams with cmsMmPerN (or with vasLitres and sdCm2)',
  qms: 'qms, or qts with qes, or rmsNsPerM with mmsGrams',
  qes: 'qes, or qts with qms, or blTm with mmsGrams and reOhm',
  vasLitres: 'vasLitres, or cmsMmPerN (or mmsGrams with fsHz) with sdCm2',
  sdCm2: 'sdCm2, or vasLitres with cmsMmPerN',
  reOhm: 'reOhm, or blTm with qes and mmsGrams',
};

function refuseMissing(known: Known): Refusal {
  const missing = BASIS.find((field) => known[field] === undefined) ?? 'fsHz';
  return refuse(missing, {
    allowed: ENOUGH[missing],
    got: null,
    why: 'the figures given leave it open',
  });
}

/** Two Qs in parallel are below each of them. */
function refuseTotalQ({ qts, qms, qes }: DriverDataSheet): Refusal | null {
  const other = qms === null ? qes : qes === null ? qms : null;
  if (qts === null || other === null || qts < other) return null;
  return refuse('qts', {
    allowed: `below ${other}`,
    got: qts,
    why: 'the total Q lies below the mechanical and below the electrical one',
  });
}

function toSi(given: DriverDataSheet): Known {
  const factors: Readonly<Record<LinkedDriverField, number>> = {
    fsHz: 1,
    qms: 1,
    qes: 1,
    qts: 1,
    vasLitres: 1e-3,
    sdCm2: 1e-4,
    reOhm: 1,
    mmsGrams: 1e-3,
    cmsMmPerN: 1e-3,
    rmsNsPerM: 1,
    blTm: 1,
  };
  const known: Known = {};
  for (const field of LINKED_DRIVER_FIELDS) {
    const value = given[field];
    if (value !== null) known[field] = value * factors[field];
  }
  return known;
}

type Link = {
  readonly to: keyof Known;
  readonly from: readonly (keyof Known)[];
  readonly by: (...from: number[]) => number;
};

/** Each link solved for each of its figures; `coils` = n of Qes. Order decides only between sheets that contradict. */
function links(coils: number): readonly Link[] {
  const stiffness = REFERENCE_AIR.stiffnessPa;
  const turn = 2 * Math.PI;
  return [
    { to: 'cmsMmPerN', from: ['vasLitres', 'sdCm2'], by: (vas, sd) => vas / (stiffness * sd ** 2) },
    { to: 'z', from: ['fsHz', 'cmsMmPerN'], by: (fs, cms) => 1 / (turn * fs * cms) },
    { to: 'z', from: ['fsHz', 'mmsGrams'], by: (fs, mms) => turn * fs * mms },
    { to: 'z', from: ['mmsGrams', 'cmsMmPerN'], by: (mms, cms) => Math.sqrt(mms / cms) },
    { to: 'z', from: ['qms', 'rmsNsPerM'], by: (qms, rms) => qms * rms },
    { to: 'z', from: ['qes', 'blTm', 'reOhm'], by: (qes, bl, re) => (qes * coils * bl ** 2) / re },
    { to: 'fsHz', from: ['z', 'mmsGrams'], by: (z, mms) => z / mms / turn },
    { to: 'fsHz', from: ['z', 'cmsMmPerN'], by: (z, cms) => 1 / (z * cms) / turn },
    { to: 'cmsMmPerN', from: ['z', 'fsHz'], by: (z, fs) => 1 / (z * turn * fs) },
    { to: 'vasLitres', from: ['cmsMmPerN', 'sdCm2'], by: (cms, sd) => stiffness * sd ** 2 * cms },
    { to: 'sdCm2', from: ['vasLitres', 'cmsMmPerN'], by: (vas, cms) => Math.sqrt(vas / (stiffness * cms)) },
    { to: 'qms', from: ['z', 'rmsNsPerM'], by: (z, rms) => z / rms },
    { to: 'qes', from: ['z', 'reOhm', 'blTm'], by: (z, re, bl) => (z * re) / (coils * bl ** 2) },
    { to: 'reOhm', from: ['z', 'qes', 'blTm'], by: (z, qes, bl) => (qes * coils * bl ** 2) / z },
    { to: 'qms', from: ['qts', 'qes'], by: (qts, qes) => (qts * qes) / (qes - qts) },
    { to: 'qes', from: ['qts', 'qms'], by: (qts, qms) => (qts * qms) / (qms - qts) },
  ];
}

/** Fills in whatever one link after another gives, until none gives more. */
function spread(known: Known, coils: number): void {
  const all = links(coils);
  for (let round = 0; round < all.length; round++) {
    const next = all.find(
      ({ to, from }) => known[to] === undefined && from.every((field) => known[field] !== undefined),
    );
    if (next === undefined) return;
    known[next.to] = next.by(...next.from.map((field) => known[field] ?? 0));
  }
}

function impliedFigures(driver: DriverParameters): Readonly<Record<LinkedDriverField, number>> {
  const elements = driverElements(driver);
  return {
    fsHz: driver.fsHz,
    qms: driver.qms,
    qes: driver.qes,
    qts: elements.qts,
    vasLitres: driver.vasLitres,
    sdCm2: driver.sdCm2,
    reOhm: driver.reOhm,
    mmsGrams: elements.mmsKg * 1e3,
    cmsMmPerN: elements.cmsMPerN * 1e3,
    rmsNsPerM: elements.rmsNsPerM,
    blTm: elements.blTm,
  };
}
