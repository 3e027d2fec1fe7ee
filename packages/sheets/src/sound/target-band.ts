// Whether the level stays where it is meant to.
import type { ResponseResult } from '@gusset/contracts/acoustics';
import type { SoundTarget, TargetResult } from '@gusset/contracts/sound';
import { type RefusalDetail, refuse } from '@gusset/units';
import type { Missing } from '../sheet-definition.ts';
import { pointsBetween, stretchesWhere } from './sound-band.ts';

export function missingOfTarget(target: SoundTarget | null): readonly Missing[] {
  if (target === null) return [];
  const needs = [
    ['lowHz', 'where the target begins'],
    ['highHz', 'where the target ends'],
    ['plusMinusDb', 'how far the level may stray from the target'],
  ] as const;
  return needs
    .filter(([part]) => target[part] === null)
    .map(([part, what]) => ({ field: `target.${part}`, what }));
}

export function refuseTarget(target: SoundTarget | null): readonly RefusalDetail[] {
  const [low, high] = [target?.lowHz?.value ?? 0, target?.highHz?.value ?? 0];
  if (target === null || high > low) return [];
  const why = `The target ends at ${high} Hz, below where it begins`;
  return [refuse('target.highHz', { allowed: `above ${low} Hz`, got: high, why }).refusal];
}

/** Null where no target is set or no point of the curve lies in it. */
export function targetResult(target: SoundTarget | null, curves: ResponseResult): TargetResult | null {
  if (target === null) return null;
  const [lowHz, highHz] = [target.lowHz?.value ?? 0, target.highHz?.value ?? 0];
  const plusMinusDb = target.plusMinusDb?.value ?? 0;
  const { frequenciesHz, splDb } = curves;
  const inside = pointsBetween(frequenciesHz, { lowHz, highHz });
  if (inside.length === 0) return null;
  const levels = inside.map((i) => splDb[i] ?? 0);
  const levelDb = target.levelDb?.value ?? (Math.max(...levels) + Math.min(...levels)) / 2;
  const isIn = new Set(inside);
  const outside = stretchesWhere(
    frequenciesHz,
    (i) => isIn.has(i) && Math.abs((splDb[i] ?? 0) - levelDb) > plusMinusDb,
  );
  return { lowHz, highHz, levelDb, plusMinusDb, outside };
}
