// What stands beyond the opening, on the way in: the raised lid, the bumper, the ground. And what a scene of the way in
// takes for granted where nobody measured it.
import { z } from 'zod';

const reachMm = z.number().min(0).max(5000);
const plusMinusMm = z.number().min(0).max(200);

export const beyondOpeningSchema = z.strictObject({
  /** Hinged at the upper end of the opening; null = not measured. */
  lid: z
    .strictObject({
      lengthMm: reachMm.positive(),
      /** From its underside outward. */
      thicknessMm: reachMm.positive(),
      /** Its underside as it stays open, from level: above 0 where the free end is higher than the hinge. */
      openRad: z.number().min(-1.6).max(3.2),
      plusMinusMm,
    })
    .nullable(),
  /** Its top stands this far below the lip and this far out from it; null = not measured. */
  bumper: z.strictObject({ outMm: reachMm.positive(), belowMm: reachMm, plusMinusMm }).nullable(),
  /** From the lip straight down; null = not measured. */
  ground: z.strictObject({ belowMm: reachMm.positive(), plusMinusMm }).nullable(),
});
export type BeyondOpening = Readonly<z.infer<typeof beyondOpeningSchema>>;

export const NOTHING_BEYOND: BeyondOpening = { lid: null, bumper: null, ground: null };

/** Soft trim that may be pressed in where the box stays; never on the way. */
export const softWallSchema = z.strictObject({
  wallId: z.string().min(1).max(40),
  crushMm: z.number().min(0).max(100),
});
export type SoftWall = Readonly<z.infer<typeof softWallSchema>>;

/** What a scene of the way in rests on beside the readings. The sentence is made in the view. */
export const sceneAssumptionSchema = z.enum([
  /** Beyond the plane of the opening all is free as far as three times the body reaches. */
  'half-plane-beyond-the-opening',
  'lid-at-its-open-angle',
  'lid-not-measured',
  'bumper-as-measured',
  'bumper-not-measured',
  'ground-as-measured',
  'ground-not-measured',
  /** Part of the space stands out past the opening: free ground begins only beyond it. */
  'free-only-past-the-bodywork',
  /** The box stands on the floor, so a floor that lies higher lifts it: floors are not moved. */
  'floor-carries-the-box',
  /** Lid arms that sweep as the lid shuts and zones to keep free count for a box in its place, not on the way. */
  'in-place-only-left-out',
  'soft-trim-taken-as-hard',
]);
export type SceneAssumption = z.infer<typeof sceneAssumptionSchema>;
