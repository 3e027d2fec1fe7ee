export { buildCavity, type CavityOptions, NO_SURROUNDINGS } from './build-cavity.ts';
export { compareSurveys } from './compare-surveys.ts';
export {
  type DryFitScene,
  type DryFitSceneOptions,
  dryFitScene,
  poseOutside,
  type SceneWalls,
} from './dry-fit-scene.ts';
export { checkMotion } from './dryfit/check-motion.ts';
export { type DryFitOptions, dryFit } from './dryfit/dry-fit.ts';
export { type DryFitReportOptions, dryFitReport } from './dryfit/dry-fit-report.ts';
export { type LargestForSheetOptions, largestForSheet } from './dryfit/largest/largest-for-sheet.ts';
export { type LargestOptions, largestProfile } from './dryfit/largest-profile.ts';
export { BEHIND_SEAT } from './forms/behind-seat.ts';
export { FOOTWELL } from './forms/footwell.ts';
export { freePointsForm, stationsForm } from './forms/free-section.ts';
export { HATCH_ESTATE } from './forms/hatch-estate.ts';
export { SALOON_BOOT } from './forms/saloon-boot.ts';
export { SPARE_WHEEL_WELL } from './forms/spare-wheel-well.ts';
export { UNDER_SEAT } from './forms/under-seat.ts';
export { largestStraightBox, type StraightBoxWish } from './largest-straight-box.ts';
export { type OpeningCheckInput, passesOpeningSquareOn } from './opening-check.ts';
export { type PlaceBoxInput, placeBox } from './place-box.ts';
export { defaultPlusMinus, missingDimensions } from './readings.ts';
export { type RestInput, restAgainst } from './rest-against.ts';
export { sketchCavity } from './sketch-cavity.ts';
export { type SurveyInState, surveyInState } from './space-state.ts';
export { cornerSpreads, reconcileSurvey } from './survey-stand.ts';
export { type Swing, sweptOutline } from './swept-outline.ts';
