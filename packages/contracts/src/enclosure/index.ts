export {
  type BoxDesign,
  type BoxDesignInput,
  type Bracing,
  type ButtJoints,
  boxDesignSchema,
  type CornerBlocks,
  type Divider,
  type DriverBody,
  type DriverFixing,
  type DriverPosition,
  driverBodySchema,
  type Finish,
  finishSchema,
  type MountedDrivers,
  type PanelStock,
  panelStockSchema,
  type TerminalCup,
} from './box-design.ts';
export {
  type BoxFinding,
  type BoxFindingCode,
  boxFindingSchema,
} from './box-finding.ts';
export { BOX_FINDING_LEVELS } from './box-finding-levels.ts';
export { type BoxPort, boxPortSchema, type SlotPort, type TubePort } from './box-port.ts';
export {
  type BoxMass,
  type BoxResult,
  type BoxSize,
  boxResultSchema,
  type Chamber,
  type CornerBlock,
  type Deduction,
  type PanelBody,
  type PanelMode,
  type PlacedDriver,
  type PlacedPort,
  type Placement,
  type Seam,
  type Vector,
} from './box-result.ts';
export {
  type BoxFace,
  type BoxShape,
  boxFaceSchema,
  boxShapeSchema,
  type WallFace,
  wallFaceSchema,
} from './box-shape.ts';
