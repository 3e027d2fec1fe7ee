// Readings as taken -> one value with its ± for each dimension of the form. The door of the engine: what cannot be
// is rejected here by name.
import {
  type CavityFinding,
  DEFAULT_PLUS_MINUS_MM,
  DEFAULT_PLUS_MINUS_RAD,
  type Dimension,
  type Measurement,
  type MeasuringMethod,
  type MissingDimension,
  type SectionForm,
  SOFT_TRIM_PLUS_MINUS_MM,
} from '@gusset/contracts/cargo';
import type { RefusalDetail } from '@gusset/units';

/** mm for a length, radians for an angle. */
export type TakenValue = { readonly value: number; readonly plusMinus: number };

export type Readings = {
  readonly taken: ReadonlyMap<string, TakenValue>;
  readonly rejected: readonly RefusalDetail[];
  readonly findings: readonly CavityFinding[];
};

/** Same limits as the schema of a measurement. */
const MAX_PLUS_MINUS_MM = 200;
const MAX_PLUS_MINUS_RAD = 0.5;

/** Default ± of one reading, mm or radians by the dimension's unit; soft trim counted for lengths. */
export function defaultPlusMinus(dimension: Dimension, method: MeasuringMethod): number {
  if (dimension.unit === 'angle') return DEFAULT_PLUS_MINUS_RAD[method];
  return DEFAULT_PLUS_MINUS_MM[method] + (dimension.onSoftTrim ? SOFT_TRIM_PLUS_MINUS_MM : 0);
}

export function fieldOf(key: string): string {
  return `measurements.${key}`;
}

/** Several readings of one dimension: the one that leaves less room is used, and a wide spread is a finding. */
export function readingsOf(form: SectionForm, measurements: readonly Measurement[]): Readings {
  const dimensions = new Map(form.dimensions.map((dimension) => [dimension.key, dimension]));
  const all = new Map<string, TakenValue[]>();
  const rejected: RefusalDetail[] = [];
  const findings: CavityFinding[] = [];
  for (const measurement of measurements) {
    const dimension = dimensions.get(measurement.key);
    const reading =
      dimension === undefined ? unknownKey(form, measurement) : takenValue(dimension, measurement);
    if ('field' in reading) {
      rejected.push(reading);
      continue;
    }
    all.set(measurement.key, [...(all.get(measurement.key) ?? []), reading]);
    if (measurement.method === 'laser' && dimension?.onSoftTrim === true) {
      findings.push({ code: 'method-unsuited', key: measurement.key, method: 'laser' });
    }
  }
  const taken = new Map<string, TakenValue>();
  for (const dimension of form.dimensions) {
    const values = all.get(dimension.key);
    if (values === undefined) continue;
    taken.set(dimension.key, tightest(dimension, values));
    findings.push(...differing(dimension, values));
  }
  return { taken, rejected, findings };
}

function unknownKey(form: SectionForm, { key }: Measurement): RefusalDetail {
  return {
    field: fieldOf(key),
    allowed: form.dimensions.map((dimension) => dimension.key).join(', '),
    got: key,
    why: `the form ${form.name} has no such dimension`,
  };
}

function takenValue(dimension: Dimension, measurement: Measurement): TakenValue | RefusalDetail {
  const { key, letter, label } = dimension;
  const isLength = 'valueMm' in measurement;
  const field = fieldOf(key);
  const called = `${letter}, ${label.toLowerCase()}`;
  if (isLength !== (dimension.unit === 'length')) {
    return {
      field,
      allowed: dimension.unit,
      got: isLength ? 'length' : 'angle',
      why: `${called} is taken as ${dimension.unit}`,
    };
  }
  const value = isLength ? measurement.valueMm : measurement.valueRad;
  const [low, high] =
    dimension.unit === 'length' ? [dimension.minMm, dimension.maxMm] : [dimension.minRad, dimension.maxRad];
  const unit = isLength ? 'mm' : 'rad';
  if (!(value >= low && value <= high)) {
    const got = Number.isFinite(value) ? value : String(value);
    return { field, allowed: `${low} to ${high} ${unit}`, got, why: `${called} is out of its range` };
  }
  const stated = isLength ? measurement.plusMinusMm : measurement.plusMinusRad;
  const plusMinus = stated ?? defaultPlusMinus(dimension, measurement.method);
  const most = isLength ? MAX_PLUS_MINUS_MM : MAX_PLUS_MINUS_RAD;
  if (!(plusMinus >= 0 && plusMinus <= most)) {
    const got = Number.isFinite(plusMinus) ? plusMinus : String(plusMinus);
    return { field, allowed: `± 0 to ${most} ${unit}`, got, why: `the ± of ${called} is out of its range` };
  }
  return { value, plusMinus };
}

function tightest(dimension: Dimension, values: readonly TakenValue[]): TakenValue {
  const sign = dimension.tighter === 'smaller' ? 1 : -1;
  return values.reduce((best, next) => {
    const closer = sign * (next.value - best.value);
    return closer < 0 || (closer === 0 && next.plusMinus > best.plusMinus) ? next : best;
  });
}

function differing(dimension: Dimension, values: readonly TakenValue[]): CavityFinding[] {
  const smallest = Math.min(...values.map((it) => it.value));
  const largest = Math.max(...values.map((it) => it.value));
  const allowed = 2 * Math.max(...values.map((it) => it.plusMinus));
  if (largest - smallest <= allowed) return [];
  return [{ code: 'readings-differ', key: dimension.key, unit: dimension.unit, smallest, largest, allowed }];
}

/** Required dimensions that nobody has taken yet, in the order of the form. */
export function missingIn(form: SectionForm, taken: ReadonlyMap<string, TakenValue>): MissingDimension[] {
  return form.dimensions
    .filter((dimension) => dimension.need === 'required' && !taken.has(dimension.key))
    .map(({ key, letter, label }) => ({ key, letter, label }));
}

/** Which required dimensions are still missing, in the order of the form. */
export function missingDimensions(
  form: SectionForm,
  measurements: readonly Measurement[],
): MissingDimension[] {
  return missingIn(form, readingsOf(form, measurements).taken);
}

/** Assumed dimensions join the taken ones; each is a finding that says so. Checks never build anything. */
export function withAssumed(
  form: SectionForm,
  taken: ReadonlyMap<string, TakenValue>,
): { readonly used: ReadonlyMap<string, TakenValue>; readonly findings: readonly CavityFinding[] } {
  const used = new Map<string, TakenValue>();
  const findings: CavityFinding[] = [];
  for (const dimension of form.dimensions) {
    const { key, unit } = dimension;
    const known = taken.get(key);
    if (known !== undefined) used.set(key, known);
    else if (dimension.assumed !== null) {
      const { why } = dimension.assumed;
      const assumed =
        dimension.unit === 'length'
          ? { value: dimension.assumed.valueMm, plusMinus: dimension.assumed.plusMinusMm }
          : { value: dimension.assumed.valueRad, plusMinus: dimension.assumed.plusMinusRad };
      used.set(key, assumed);
      findings.push({ code: 'assumed', key, unit, value: assumed.value, why });
    }
  }
  return { used, findings };
}
