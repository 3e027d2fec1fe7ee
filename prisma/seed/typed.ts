// What a person typed, read as the screens read it, so that the value and the typing agree.
import { isRefusal, type LengthUnit, parseLength, parseVolume } from '@gusset/units';

/** A length field: `length('380')`, `length('15 1/4"', 'in')`. */
export function length(typed: string, unit: LengthUnit = 'mm') {
  const read = parseLength(typed, { unit, minMm: -20_000 });
  if (isRefusal(read)) throw new Error(`the demo types a length that nobody can read: ${typed}`);
  return { mm: read.mm, typed, unit: read.unit };
}

export function litres(typed: string) {
  const read = parseVolume(typed, { unit: 'L' });
  if (isRefusal(read)) throw new Error(`the demo types a volume that nobody can read: ${typed}`);
  return { litres: read.litres, typed };
}

/** A figure in the unit that its field prints. */
export function figure(value: number) {
  return { value, typed: String(value) };
}

export function watts(count: number) {
  return { watts: count, typed: String(count) };
}
