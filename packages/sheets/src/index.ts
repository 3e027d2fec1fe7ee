export { type BoxUpstream, boxDesignOf, type DesignedBox } from './box/box-design.ts';
export { boxFrontScene, boxIsometricScene } from './box/box-front-scene.ts';
export { boxPlanScene } from './box/box-plan-scene.ts';
export { boxSectionScene } from './box/box-section-scene.ts';
export { boxSheet } from './box/box-sheet.ts';
export { type BoxFromSection, boxFromSection, boxWithNet } from './box/box-sizing.ts';
export { type CornerInBox, cornerInBox } from './box/corner-in-box.ts';
export { briefSheet } from './brief/brief-sheet.ts';
export { canonicalJson } from './canonical-json.ts';
export { stepDetail, stepFigures, stepTitle, waitWords } from './cutting/assembly-words.ts';
export { type BoardScore, betterOf, boardScores, withSeed } from './cutting/better-layout.ts';
export { markOf } from './cutting/cutting-notes.ts';
export {
  blankWords,
  cutMaterials,
  partingCuts,
  rowWords,
  sheetMaps,
  sheetName,
} from './cutting/cutting-papers.ts';
export { type CuttingUpstream, cuttingSheet } from './cutting/cutting-sheet.ts';
export { glueUp } from './cutting/glue-up.ts';
export {
  askewLine,
  benchLines,
  bevelledEdges,
  bevelWords,
  GLUE_PAGE_CAUTION,
  ROUTER_PAGE_LEAD,
  SAW_PAGE_CAUTION,
  settingsWords,
  stepWords,
} from './cutting/machine-words.ts';
export { type BoardWork, machineWork } from './cutting/machine-work.ts';
export { notchWords } from './cutting/notch-words.ts';
export { gluePage, routerPage, sawPage } from './cutting/work-pages.ts';
export { answerLoading, LOADING_ENGINE_VERSION, type LoadingOptions } from './dry-fit/answer-loading.ts';
export { type LoadingQuestion, loadingQuestion } from './dry-fit/loading-case.ts';
export {
  type BoxLoadingRemedy,
  loadingRemedies,
  type RemedyOptions,
  type RemedyQuestion,
} from './dry-fit/loading-remedies.ts';
export { loadingScene, poseOnWay, shareOfTightest } from './dry-fit/loading-scene.ts';
export { type MockUpInput, type MockUpPart, mockUpDocument } from './dry-fit/mock-up.ts';
export { profileMark, type TestFitStanding, testFitStanding, testFitWarnings } from './dry-fit/test-fit.ts';
export { type PartsUpstream, type SheetsUsed, SUPPLY_USES } from './parts/derived-lines.ts';
export { partsSheet } from './parts/parts-sheet.ts';
export { quantityWords } from './parts/quantity-words.ts';
export { type PlanUpstream, planSheet } from './plan/plan-sheet.ts';
export { amountWords } from './price/price-figures.ts';
export { CUSTOMER_PARTS_KEY } from './price/price-lines.ts';
export { type PriceUpstream, priceSheet } from './price/price-sheet.ts';
export { standardJobTasks, withoutTask, withTask } from './price/standard-job-tasks.ts';
export {
  type AnySheetDefinition,
  anySheet,
  changedFigures,
  type EnclosureUpstream,
  enclosuresOf,
  type GatheredUpstream,
  incomplete,
  type KeyFigure,
  type Missing,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from './sheet-definition.ts';
export { cabinOf, type UsedCabin } from './sound/cabin-of.ts';
export {
  type ChartChoice,
  type ChartSpread,
  designDash,
  designName,
  freeLetter,
} from './sound/chart-lines.ts';
export { enclosureOf } from './sound/enclosure-of.ts';
export { exposureCaution, exposureMinutes, exposureWords } from './sound/exposure.ts';
export { limitCauseWords } from './sound/limit-charts.ts';
export { soundSystem } from './sound/solve-design.ts';
export { chartAssumptions, chartsOf, type SoundChart, soundChart } from './sound/sound-charts.ts';
export { portWords } from './sound/sound-figures.ts';
export { type SoundPaper, soundPaper } from './sound/sound-paper.ts';
export { soundSection } from './sound/sound-section.ts';
export { type SoundUpstream, soundSheet } from './sound/sound-sheet.ts';
export { amplifierWords, findingWords, type SoundHeadline, soundHeadline } from './sound/sound-words.ts';
export {
  cornersOf,
  type MeasuredSpace,
  narrowingSlab,
  spaceInState,
  surveyCavity,
  toKeepFreeZone,
  toObstruction,
} from './survey/survey-cavity.ts';
export { type SurveyDrawingOptions, surveyView } from './survey/survey-drawing.ts';
export {
  asMeasurement,
  FREE_SECTION_NAME,
  isWorthTaking,
  nextToTake,
  surveyForm,
  worthTaking,
} from './survey/survey-form.ts';
export { keyAfter, readingRefusal } from './survey/survey-reading.ts';
export { spaceWords, surveySheet } from './survey/survey-sheet.ts';
