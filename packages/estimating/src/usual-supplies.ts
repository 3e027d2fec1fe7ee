// Figures to start from where a shop has none of its own. Trade practice or estimates, every one to be edited
// after a few jobs; the tin's data sheet goes before all of them.

/** Water-borne textured coat by roller: about 3.2 m² a litre and coat; two coats are planned. Trade practice. */
export const USUAL_TEXTURED_COAT = {
  coats: 2,
  coverageM2PerLitre: 3.2,
  wasteBasisPoints: 1_500,
  rollerLossLitres: 0.1,
} as const;

/** Two coats of primer and two of paint at 8 to 12 m² a litre and coat. Trade practice. */
export const USUAL_PAINT = {
  coats: 4,
  coverageM2PerLitre: 10,
  wasteBasisPoints: 1_500,
  rollerLossLitres: 0.1,
} as const;

/** Overlap trimmed to a butt seam, 50 mm turned in at each end, 10 to 25 % waste; contact adhesive on both faces. */
export const USUAL_CARPET = {
  overlapMm: 25,
  turnInMm: 50,
  rollWidthMm: 1_370,
  wasteBasisPoints: 1_500,
  adhesiveM2PerLitre: 1.75,
  adhesiveWasteBasisPoints: 1_000,
} as const;

/** Screws every 150 mm, 25 mm clear of corners (trade practice); glue and sealant are estimates. */
export const USUAL_JOINTS = {
  glueGramsPerM2: 200,
  glueWasteBasisPoints: 1_500,
  screws: { spacingMm: 150, fromCornerMm: 25 },
  filletLegMm: 6,
  sealantWasteBasisPoints: 1_000,
} as const;
