// The numbered sheets of a job.
export { sheetKindSchema } from './sheet-kind-schema.ts';
export {
  revisionLetter,
  SHEET_KINDS,
  SHEETS,
  type SheetChange,
  type SheetKind,
  type SheetPlace,
} from './sheet-places.ts';
