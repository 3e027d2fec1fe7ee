// What a data sheet comes to, in words: what it leaves open, what follows from it, where it contradicts itself. Pure.
import { type DerivedDriver, deriveDriver } from '@gusset/acoustics';
import type { DriverDataSheetInput, LinkedDriverField } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';

export type FigureLine = {
  readonly field: LinkedDriverField;
  readonly name: string;
  readonly text: string;
};

export type DriverFindings =
  | { readonly kind: 'open'; readonly words: string; readonly allowed: string }
  | {
      readonly kind: 'whole';
      readonly derived: readonly FigureLine[];
      readonly contradictions: readonly (FigureLine & { readonly words: string })[];
      readonly takenAsZero: readonly string[];
    };

const NAMES: Readonly<Record<LinkedDriverField, { readonly name: string; readonly unit: string }>> = {
  fsHz: { name: 'fs', unit: 'Hz' },
  qms: { name: 'Qms', unit: '' },
  qes: { name: 'Qes', unit: '' },
  qts: { name: 'Qts', unit: '' },
  vasLitres: { name: 'Vas', unit: 'L' },
  sdCm2: { name: 'Sd', unit: 'cm²' },
  reOhm: { name: 'Re', unit: 'Ω' },
  mmsGrams: { name: 'Mms', unit: 'g' },
  cmsMmPerN: { name: 'Cms', unit: 'mm/N' },
  rmsNsPerM: { name: 'Rms', unit: 'N s/m' },
  blTm: { name: 'BL', unit: 'T m' },
};

const DIGITS = 3;

/** Three significant figures: no data sheet is truer. */
function shown(field: LinkedDriverField, value: number): string {
  const { unit } = NAMES[field];
  const text = String(Number(value.toPrecision(DIGITS)));
  return unit === '' ? text : `${text} ${unit}`;
}

/** Field names of a refusal as the sheet writes them. */
function plain(text: string): string {
  return Object.entries(NAMES).reduce(
    (words, [field, { name }]) => words.replaceAll(new RegExp(`\\b${field}\\b`, 'g'), name),
    text,
  );
}

export function driverFindings(sheet: DriverDataSheetInput): DriverFindings {
  const result = deriveDriver(sheet);
  if (isRefusal(result)) {
    const { field, why, allowed } = result.refusal;
    return { kind: 'open', words: `${plain(field)}: ${plain(why)}`, allowed: plain(allowed) };
  }
  return whole(result);
}

function whole({ derived, contradictions, takenAsZero }: DerivedDriver): DriverFindings {
  return {
    kind: 'whole',
    derived: derived.map(({ field, value }) => ({
      field,
      name: NAMES[field].name,
      text: shown(field, value),
    })),
    contradictions: contradictions.map(({ field, given, implied, percent }) => ({
      field,
      name: NAMES[field].name,
      text: shown(field, given),
      words: `The other figures say ${shown(field, implied)}, so it is ${Math.abs(percent).toFixed(0)} % too ${percent > 0 ? 'high' : 'low'}.`,
    })),
    takenAsZero: takenAsZero.map((field) =>
      field === 'leMh'
        ? 'Coil inductance counts as none.'
        : 'The driver counts as taking nothing from the box.',
    ),
  };
}
