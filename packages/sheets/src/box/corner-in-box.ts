// What the drivers do in the air that the box really has, from the sheet that was worked out for the air it wants.
import type { SoundResult } from '@gusset/contracts/sound';

export type CornerInBox = { readonly qtc: number; readonly fcHz: number; readonly f3Hz: number };

/**
 * A closed box's resonance and Q both go with √(1 + α), and α with 1 / volume (R. H. Small, "Closed-Box Loudspeaker
 * Systems, Part I", 1972, eq. 5 and 9). The losses of the box are carried over as they are, which holds to about a
 * hundredth while the volume stays within a third of the wanted one; the sound sheet itself works them out. Null for any
 * other kind of box, whose corner does not follow from its volume alone.
 */
export function cornerInBox(
  sound: Pick<SoundResult, 'netLitres' | 'alpha' | 'qtc' | 'fcHz' | 'f3Hz'>,
  netLitres: number,
): CornerInBox | null {
  const { alpha: wantedAlpha, netLitres: wantedLitres, qtc: wantedQ, fcHz: wantedHz, f3Hz: cornerHz } = sound;
  if (wantedAlpha === null || wantedLitres === null) return null;
  if (wantedQ === null || wantedHz === null || cornerHz === null || !(netLitres > 0)) return null;
  const alpha = (wantedAlpha * wantedLitres) / netLitres;
  const factor = Math.sqrt((1 + alpha) / (1 + wantedAlpha));
  const qtc = wantedQ * factor;
  const fcHz = wantedHz * factor;
  const share = threeDecibelsDown(qtc) / threeDecibelsDown(wantedQ);
  return { qtc, fcHz, f3Hz: cornerHz * factor * share };
}

/** In multiples of the resonance (Small, eq. 76). */
function threeDecibelsDown(qtc: number): number {
  const half = (1 / qtc ** 2 - 2) / 2;
  return Math.sqrt(half + Math.sqrt(half ** 2 + 1));
}
