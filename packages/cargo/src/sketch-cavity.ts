// The form drawing itself: best-effort outline while the dimensions come in, with a place for every letter.
import type {
  CavityFinding,
  CavitySketch,
  Dimension,
  LabelAnchor,
  Measurement,
  SectionForm,
  SketchWall,
} from '@gusset/contracts/cargo';
import { buildCavity } from './build-cavity.ts';
import { checksOf } from './check-dimensions.ts';
import { checkFindings, comparisonFindings } from './findings.ts';
import { construct } from './forms/construct.ts';
import { type Construction, typicalValue } from './forms/construction.ts';
import { outlineOf } from './outline.ts';
import { boundsOf } from './plane/polygon.ts';
import { missingIn, readingsOf, type TakenValue, withAssumed } from './readings.ts';
import { nudges } from './refusals.ts';
import { type Spread, spreadOf } from './spread.ts';

/**
 * Draws what is known, mm. Dimensions not taken yet stand at their typical value, scaled to the ones that are, and
 * the walls they place say what they wait for. Findings that need no missing dimension are already there.
 */
export function sketchCavity(form: SectionForm, measurements: readonly Measurement[]): CavitySketch {
  const readings = readingsOf(form, measurements);
  const missing = missingIn(form, readings.taken);
  const { used, findings: assumptions } = withAssumed(form, readings.taken);
  const values = new Map([...used].map(([key, taken]) => [key, taken.value]));
  for (const dimension of form.dimensions) {
    if (missing.some(({ key }) => key === dimension.key)) {
      values.set(dimension.key, typicalValue(dimension) * scaleFor(dimension, form, readings.taken));
    }
  }
  const construction = construct(form, values);
  const waiting = spreadOf(
    form,
    values,
    nudges(
      form,
      missing.map(({ key }) => key),
    ),
  );
  const spread = spreadOf(form, values, new Map([...used].map(([key, taken]) => [key, taken.plusMinus])));
  const built = missing.length === 0 ? buildCavity(form, measurements) : null;
  const refused = built !== null && 'refusal' in built ? [rejection(built.refusal)] : [];
  return {
    walls: wallsOf(construction, waiting),
    plan: planOf(construction),
    labels: labelsOf(form, construction, readings.taken, used),
    missing,
    rejected: [
      ...readings.rejected.map(rejection),
      ...refused.filter(notIn(readings.rejected.map(rejection))),
    ],
    findings: [
      ...settled(construction, readings.taken, spread, waiting),
      ...readings.findings,
      ...assumptions,
    ],
    complete: missing.length === 0 && refused.length === 0,
  };
}

type Rejection = CavitySketch['rejected'][number];

function rejection({ field, allowed, why }: { field: string; allowed: string; why: string }): Rejection {
  return { key: field.replace(/^measurements\./, ''), allowed, why };
}

function notIn(others: readonly Rejection[]): (it: Rejection) => boolean {
  return (it) => !others.some((other) => other.key === it.key && other.why === it.why);
}

/** Typical lengths follow the ones taken so far in the same view: geometric mean of taken over typical. */
function scaleFor(dimension: Dimension, form: SectionForm, taken: ReadonlyMap<string, TakenValue>): number {
  if (dimension.unit === 'angle') return 1;
  const logs = form.dimensions.flatMap((other) => {
    const value = taken.get(other.key)?.value ?? 0;
    const comparable = other.unit === 'length' && other.drawing.view === dimension.drawing.view;
    if (!comparable || other.need === 'check' || value <= 0 || other.typicalMm <= 0) return [];
    return [Math.log(value / other.typicalMm)];
  });
  return logs.length === 0 ? 1 : Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
}

function wallsOf(construction: Construction, waiting: Spread): SketchWall[] {
  return outlineOf(construction).map(({ wall, start, end }) => {
    const keys = [start, end].flatMap(({ id }) => [...(waiting.corners.get(id)?.keys() ?? [])]);
    return { ...wall, from: start.at, to: end.at, waitsFor: [...new Set(keys)].sort() };
  });
}

function planOf(construction: Construction): CavitySketch['plan'] {
  return construction.slabs
    .map(({ id, name, polygon, widthMm }) => {
      const { xMinMm, xMaxMm } = boundsOf(polygon);
      const half = widthMm / 2;
      const corners = [
        { xMm: xMinMm, yMm: -half },
        { xMm: xMaxMm, yMm: -half },
        { xMm: xMaxMm, yMm: half },
        { xMm: xMinMm, yMm: half },
      ];
      return { id, name, polygon: corners, widthMm };
    })
    .sort((a, b) => b.widthMm - a.widthMm || (a.id < b.id ? -1 : 1))
    .map(({ id, name, polygon }) => ({ id, name, polygon }));
}

function labelsOf(
  form: SectionForm,
  construction: Construction,
  taken: ReadonlyMap<string, TakenValue>,
  used: ReadonlyMap<string, TakenValue>,
): LabelAnchor[] {
  const anchors = new Map(construction.anchors.map((anchor) => [anchor.key, anchor]));
  return form.dimensions.flatMap(({ key, letter }) => {
    const anchor = anchors.get(key);
    if (anchor === undefined) return [];
    const standing = taken.has(key) ? 'measured' : used.has(key) ? 'assumed' : 'typical';
    return [{ ...anchor, letter, standing }];
  });
}

/** Findings that rest on no dimension that is still missing. */
function settled(
  construction: Construction,
  taken: ReadonlyMap<string, TakenValue>,
  spread: Spread,
  waiting: Spread,
): CavityFinding[] {
  const waits = (id: string) => (waiting.scalars.get(id) ?? []).length > 0;
  const comparisons = construction.comparisons.filter(({ code }) => !waits(`compare:${code}`));
  const derived = new Map([...construction.derived].filter(([key]) => !waits(`derived:${key}`)));
  return [
    ...comparisonFindings({ ...construction, comparisons }, spread),
    ...checkFindings(checksOf(derived, taken, spread)),
    ...construction.findings,
  ];
}
