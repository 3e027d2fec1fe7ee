export { type AssemblyQuestion, assemblyPlan } from './assembly/assembly-plan.ts';
export { curingFactor } from './assembly/curing-factor.ts';
export { checkLayout, type LayoutProblemFound } from './check-layout.ts';
export { type CutListGroup, cutList, cutParts, groupCutList } from './cut-list.ts';
export {
  layoutByMaterial,
  type MaterialLayout,
  type MaterialsInput,
  type MaterialsResult,
} from './layout-by-material.ts';
export { askewCuts } from './saw/askew-cuts.ts';
export { bevelSetUps } from './saw/bevel-set-ups.ts';
export { replayPlan, type SawPlanFault } from './saw/replay-plan.ts';
export { sawPlan } from './saw/saw-plan.ts';
export {
  DEFAULT_ITERATIONS,
  type LayoutOptions,
  type LayoutProgress,
  layoutRectangles,
  layoutSheets,
} from './sheet-layout.ts';
export { benchWork } from './workbench/bench-work.ts';
