// Naming the dimension behind a section that cannot be, and prisms that cannot stand in one.
import type { SectionForm, Surroundings } from '@gusset/contracts/cargo';
import { type Refusal, refuse } from '@gusset/units';
import { assumedValue, type DimensionValues, typicalValue } from './forms/construction.ts';
import type { OutlineWall } from './outline.ts';
import { signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';
import { fieldOf } from './readings.ts';
import { spreadOf } from './spread.ts';

/** A nudge that shows which dimensions place a corner: 1 mm, or about half a degree. */
const NUDGE = { length: 1, angle: 0.01 } as const;

/** How far each of these dimensions may be nudged to see what it places. */
export function nudges(form: SectionForm, keys: Iterable<string>): DimensionValues {
  const wanted = new Set(keys);
  return new Map(
    form.dimensions.filter(({ key }) => wanted.has(key)).map(({ key, unit }) => [key, NUDGE[unit]]),
  );
}

/**
 * Refuses a section whose walls cannot stand, naming the dimension that places them and lies farthest from what is
 * usual; the others that place them are listed in the reason.
 */
export function blamed(
  form: SectionForm,
  values: DimensionValues,
  walls: readonly OutlineWall[],
  why: string,
): Refusal {
  const { corners } = spreadOf(form, values, nudges(form, values.keys()));
  const ids = new Set(walls.flatMap(({ start, end }) => [start.id, end.id]));
  const placing = new Set([...ids].flatMap((id) => [...(corners.get(id)?.keys() ?? [])]));
  const dimensions = form.dimensions.filter(({ key }) => placing.has(key));
  const odd = (key: string): number => {
    const dimension = form.dimensions.find((it) => it.key === key);
    if (dimension === undefined) return 0;
    const usual = assumedValue(dimension) ?? typicalValue(dimension);
    const [low, high] =
      dimension.unit === 'length' ? [dimension.minMm, dimension.maxMm] : [dimension.minRad, dimension.maxRad];
    return Math.abs((values.get(key) ?? usual) - usual) / (high - low);
  };
  const [first, ...others] = [...dimensions].sort((a, b) => odd(b.key) - odd(a.key));
  if (first === undefined) return refuse('form', { allowed: 'walls that do not cross', got: null, why });
  const also = others.length === 0 ? '' : `; look also at ${others.map(({ letter }) => letter).join(', ')}`;
  return refuse(fieldOf(first.key), {
    allowed: `a ${first.label.toLowerCase()} that agrees with the others`,
    got: values.get(first.key) ?? null,
    why: `${why}${also}`,
  });
}

/** Null when every prism has an inside and a width. */
export function surroundingsRefusal({ obstructions, keepFree }: Surroundings): Refusal | null {
  const prisms = [
    ...obstructions.map((prism, index) => ({ prism, field: `obstructions[${index}]` })),
    ...keepFree.map((prism, index) => ({ prism, field: `keepFree[${index}]` })),
  ];
  for (const { prism, field } of prisms) {
    const { polygon, zMinMm, zMaxMm, plusMinusMm, name } = prism;
    const coordinates = [...polygon.flatMap((it) => [it.xMm, it.yMm]), zMinMm, zMaxMm, plusMinusMm];
    const wrong = coordinates.find((it) => !Number.isFinite(it));
    if (wrong !== undefined) {
      return refuse(field, { allowed: 'finite numbers', got: wrong, why: `${name} has no definite place` });
    }
    if (!(zMinMm < zMaxMm) || plusMinusMm < 0) {
      return refuse(`${field}.zMaxMm`, {
        allowed: `above ${zMinMm} mm`,
        got: zMaxMm,
        why: `${name} has no width`,
      });
    }
    if (polygon.length < 3 || signedAreaMm2(polygon) === 0 || crossingEdges(polygon) !== null) {
      return refuse(`${field}.polygon`, {
        allowed: 'corners going round an inside, edges not crossing',
        got: polygon.length,
        why: `${name} has no proper outline`,
      });
    }
  }
  return null;
}
