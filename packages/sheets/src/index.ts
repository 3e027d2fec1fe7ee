export { briefSheet } from './brief/brief-sheet.ts';
export { canonicalJson } from './canonical-json.ts';
export {
  type AnySheetDefinition,
  anySheet,
  changedFigures,
  incomplete,
  type KeyFigure,
  type Missing,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from './sheet-definition.ts';
export { type SoundUpstream, soundSheet } from './sound/sound-sheet.ts';
