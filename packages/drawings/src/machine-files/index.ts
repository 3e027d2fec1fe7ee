export { outlinesDxf, partDxf, type SheetOfParts, sheetDxf } from './dxf-file.ts';
export type { MachinePart } from './machine-part.ts';
export { partSvg } from './svg-file.ts';
