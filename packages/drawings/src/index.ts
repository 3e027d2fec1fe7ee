export { type LinearAxis, linearAxis, linearTicks, logTicks, type Tick } from './charts/axis-ticks.ts';
export {
  hourFigure,
  type Lane,
  type LaneChartInput,
  type LaneTask,
  type LaneTaskState,
  type LaneView,
  laneChart,
} from './charts/lane-chart.ts';
export {
  type ChartPlace,
  type ChartView,
  type ChartZone,
  CURVE_DASHES,
  type CurveDash,
  type CurvePoint,
  type CurveTone,
  type ResponseChartInput,
  type ResponseCurve,
  responseChart,
  responseChartPlace,
} from './charts/response-chart.ts';
export { type TimeChartInput, timeChart } from './charts/time-chart.ts';
export {
  type CutListRow,
  type CutMaterial,
  type CutSheetInput,
  cutSheetDocument,
  SAW_CAUTION,
} from './paper/cut-sheet-document.ts';
export {
  type DrawingSheet,
  drawSheetPage,
  drawSheetPages,
  PLANNING_CAUTION,
} from './paper/draw-sheet-page.ts';
export {
  type PaperBlock,
  type PaperDocument,
  type PaperPage,
  pageScene,
  type TableRow,
  type WordsRole,
} from './paper/paper-page.ts';
export { PAGE_MARGIN_PT, type PaperFormat, paperExtent, printableArea } from './paper/paper-size.ts';
export { quoteDocument } from './paper/quote-document.ts';
export { type SoundSheetInput, soundSheetDocument } from './paper/sound-sheet-document.ts';
export { type SurveyRow, type SurveySheetInput, surveySheetDocument } from './paper/survey-sheet-document.ts';
export { type PageFacts, TITLE_BLOCK_HEIGHT_PT, titleBlockItems } from './paper/title-block.ts';
export type { WorkPage, WorkRow, WorkTable } from './paper/work-page.ts';
export {
  type FlatLayer,
  flattenItem,
  flattenScene,
  type KeyedPlace,
  keyedPlaces,
  type ShapeGroup,
} from './scene/flatten.ts';
export { hatchSegments, type Segment } from './scene/hatch-segments.ts';
export { circle, dimension, hatch, line, polygon, polyline, region, text } from './scene/items.ts';
export {
  HATCHES,
  type HatchKind,
  type Ink,
  type Pen,
  PRINT_INKS,
  penOf,
  type Stroke,
  type StrokeRole,
} from './scene/pens.ts';
export type {
  ArcItem,
  BalloonItem,
  BreakItem,
  CentreLineItem,
  CircleItem,
  DimensionItem,
  HatchItem,
  InsetItem,
  Layer,
  LeaderItem,
  LeaderTone,
  LineItem,
  PolylineItem,
  RegionItem,
  Scene,
  SceneItem,
  TextAnchor,
  TextFace,
  TextItem,
  WorldFrame,
} from './scene/scene.ts';
export type { PathCommand, PathShape, Shape, TextShape } from './scene/shape.ts';
export { type Extent, rectangle, type Spot, spot } from './scene/spot.ts';
export { escapeXml, type RenderSvgOptions, renderSvg } from './svg/render-svg.ts';
export { type SvgElement, type SvgManner, type SvgTheme, sceneToSvgElements } from './svg/svg-elements.ts';
export { shortenText, textWidthPt, wrapText } from './text/text-width.ts';
export {
  type BoltCircle,
  type BoxFrontInput,
  boltCentres,
  boxFront,
  type DrawnCutout,
} from './views/box-front.ts';
export {
  type BoxIsometricInput,
  boxIsometric,
  type DrawnFace,
  type Point3Mm,
} from './views/box-isometric.ts';
export { type BoxViewInput, boxPlan, boxSection, type DrawnPart } from './views/box-view.ts';
export {
  type CavityViewInput,
  cavityPlan,
  cavitySection,
  type DrawnBox,
  type DrawnWayOut,
  posed,
} from './views/cavity-view.ts';
export type { DrawnClearance } from './views/clearance-notes.ts';
export {
  type DrawingView,
  type Fitted,
  fitWorld,
  type Margins,
  placeInFrame,
  readFromFrame,
  SCREEN_VIEW,
} from './views/drawing-view.ts';
export { type DrawnVent, type EnclosureSectionInput, enclosureSection } from './views/enclosure-section.ts';
export { panelDrawing } from './views/panel-drawing.ts';
export type { DrawnDimension } from './views/placed-dimensions.ts';
export {
  type SheetCut,
  type SheetMapInput,
  type SheetPlacement,
  type SheetRectangle,
  sheetMap,
} from './views/sheet-map.ts';
export type { DrawnLabel } from './views/survey-labels.ts';
export type { DrawnEdge, DrawnObstruction } from './views/vehicle-outline.ts';
