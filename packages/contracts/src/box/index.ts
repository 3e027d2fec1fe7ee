export { BOX_FACES, type BoxFaceName } from './box-faces.ts';
export {
  type BoxInput,
  type BoxLength,
  boxInputSchema,
  boxLengthSchema,
  DEFAULT_CUTOUT_CLEARANCE_MM,
} from './box-input.ts';
export type {
  BoxFacts,
  BoxNote,
  BoxPlace,
  BoxSheetResult,
  BoxStock,
  DriverFact,
  FinishFact,
  FinishTotal,
  SheetFact,
} from './box-sheet-result.ts';
