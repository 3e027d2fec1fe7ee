// What the drivers do in the air that the box really has, from the sheet that was worked out for the air it wants.
import type { SoundResult } from '@gusset/contracts/sound';

export type CornerInBox = { readonly qtc: number; readonly fcHz: number; readonly f3Hz: number };

/**
 * A closed box's resonance and Q both go with √(1 + α), and α with 1 / volume (R. H. Small, "Closed-Box Loudspeaker
 * Systems, Part I", 1972, eq. 5 and 9). The losses of the box are carried over as they are, which holds to about a
 * hundredth while the volume stays within a third of the wanted one; the sound sheet itself works them out.
 */
export function cornerInBox(
  sound: Pick<SoundResult, 'netLitres' | 'alpha' | 'qtc' | 'fcHz' | 'f3Hz'>,
  netLitres: number,
): CornerInBox | null {
  if (!(netLitres > 0)) return null;
  const alpha = (sound.alpha * sound.netLitres) / netLitres;
  const factor = Math.sqrt((1 + alpha) / (1 + sound.alpha));
  const qtc = sound.qtc * factor;
  const fcHz = sound.fcHz * factor;
  const share = threeDecibelsDown(qtc) / threeDecibelsDown(sound.qtc);
  return { qtc, fcHz, f3Hz: sound.f3Hz * factor * share };
}

/** In multiples of the resonance (Small, eq. 76). */
function threeDecibelsDown(qtc: number): number {
  const half = (1 / qtc ** 2 - 2) / 2;
  return Math.sqrt(half + Math.sqrt(half ** 2 + 1));
}
