export { checkLayout, type LayoutProblemFound } from './check-layout.ts';
export { type CutListGroup, cutList, cutParts, groupCutList } from './cut-list.ts';
export {
  layoutByMaterial,
  type MaterialLayout,
  type MaterialsInput,
  type MaterialsResult,
} from './layout-by-material.ts';
export {
  DEFAULT_ITERATIONS,
  type LayoutOptions,
  type LayoutProgress,
  layoutRectangles,
  layoutSheets,
} from './sheet-layout.ts';
