// What a box uses up beside its panels: finish, adhesive, glue, sealant, screws. Plain sizes in, quantities out.
import { z } from 'zod';

const shareSchema = z.number().min(0).max(10_000);
const areaM2Schema = z.number().min(0).max(200);

export const boxFinishSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  /** Rolled or sprayed: textured coat, primer, paint. */
  z.strictObject({
    kind: z.literal('coating'),
    name: z.string().min(1).max(80),
    areaM2: areaM2Schema,
    coats: z.number().int().min(1).max(12),
    /** One coat, as the tin says. */
    coverageM2PerLitre: z.number().min(0.1).max(40),
    wasteBasisPoints: shareSchema,
    rollerLossLitres: z.number().min(0).max(5),
  }),
  z.strictObject({
    kind: z.literal('carpet'),
    name: z.string().min(1).max(80),
    /** Round the box, the way the strip runs. */
    wrapMm: z.number().positive().max(20_000),
    /** Across the strip: the box's width. */
    acrossMm: z.number().positive().max(5_000),
    /** Both ends together. */
    endsM2: areaM2Schema,
    overlapMm: z.number().min(0).max(500),
    turnInMm: z.number().min(0).max(500),
    rollWidthMm: z.number().min(100).max(5_000),
    wasteBasisPoints: shareSchema,
    /** Finished area from a litre, both faces coated. */
    adhesiveM2PerLitre: z.number().min(0.1).max(40),
    adhesiveWasteBasisPoints: shareSchema,
  }),
]);
export type BoxFinish = Readonly<z.infer<typeof boxFinishSchema>>;

export const boxSuppliesInputSchema = z.strictObject({
  finish: boxFinishSchema,
  /** Length of each glued joint, metres. */
  jointLengthsM: z.array(z.number().min(0).max(5)).max(400),
  /** Width of the glued face: the panel's thickness. */
  jointWidthMm: z.number().positive().max(100),
  glueGramsPerM2: z.number().min(0).max(1_000),
  glueWasteBasisPoints: shareSchema,
  /** Null = no screws, clamps hold while the glue sets. */
  screws: z
    .strictObject({
      spacingMm: z.number().min(20).max(500),
      /** From the corner to the first screw. */
      fromCornerMm: z.number().min(0).max(200),
    })
    .nullable(),
  /** Inside seams that get a fillet of sealant, metres together. */
  sealedSeamM: z.number().min(0).max(500),
  /** Legs of the fillet's right-angled section. */
  filletLegMm: z.number().min(0).max(50),
  sealantWasteBasisPoints: shareSchema,
  drivers: z
    .array(
      z.strictObject({
        boltCount: z.number().int().min(0).max(24),
        /** Round the cut-out. */
        gasketM: z.number().min(0).max(5),
      }),
    )
    .max(24),
});
export type BoxSuppliesInput = Readonly<z.infer<typeof boxSuppliesInputSchema>>;

export const supplyCodeSchema = z.enum([
  'coating',
  'carpet',
  'carpet-adhesive',
  'wood-glue',
  'joint-screws',
  'seam-sealant',
  'driver-bolts',
  'gasket-tape',
]);
export type SupplyCode = z.infer<typeof supplyCodeSchema>;

export const boxSupplySchema = z.strictObject({
  code: supplyCodeSchema,
  name: z.string(),
  quantity: z.number().min(0),
  unit: z.enum(['L', 'm²', 'm', 'kg', 'pcs']),
});
export type BoxSupply = Readonly<z.infer<typeof boxSupplySchema>>;
