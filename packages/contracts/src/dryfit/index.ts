// Whether a box goes in and comes out again: the question and its answer. Section plane as in `geometry`: x toward the
// opening, y up, z across; a pose puts the profile's own origin at (x, y), turned by theta, and its width from z on.
export {
  type DryFitCase,
  type DryFitCaseInput,
  type DryFitObstacle,
  type DryFitResult,
  type DryFitVerdict,
  dryFitCaseSchema,
  dryFitObstacleSchema,
  dryFitVerdictSchema,
} from './case.ts';
export {
  type LargestForSheetResult,
  type LargestForSheetWish,
  type LargestProfileInput,
  type LargestProfileResult,
  type LargestProfileWish,
  largestProfileSchema,
  type MeasureLimits,
  type ProfileFamily,
  type ProfileMeasures,
  profileFamilySchema,
  type SheetFamily,
  type SheetProfile,
} from './largest.ts';
export type {
  BodyPart,
  ContactSurface,
  DecidingDimension,
  DryFitAlternative,
  DryFitAssumption,
  DryFitContact,
  DryFitNotConsidered,
  DryFitProgress,
  DryFitQuestion,
  DryFitRemedy,
  DryFitReport,
  TightPlace,
  WayMargin,
} from './report.ts';
