// Planning: the shop's forward plan, and the general scheduler behind it.
export { checkSchedule, type ScheduleFault } from './core/check-schedule.ts';
export { type ProjectAnswer, type SolveProjectOptions, solveProject } from './core/solve-project.ts';
export { checkShopPlan, type ShopPlanFault } from './shop/check-shop-plan.ts';
export { comparePlans } from './shop/compare-plans.ts';
export { withLeave, withPartDate } from './shop/plan-changes.ts';
export { type PlanShopOptions, planShop } from './shop/plan-shop.ts';
export { type BoxFinish, standardTaskTemplate } from './shop/standard-task-template.ts';
export {
  type TasksFromTemplateOptions,
  tasksFromTemplate,
  tasksNeeding,
} from './shop/tasks-from-template.ts';
export { waitFactorAt } from './shop/wait-factor.ts';
