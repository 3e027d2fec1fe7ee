// Every computation that runs in a thread. This module is loaded by the API and by each thread.
import type { ComputeTable } from './compute-task.ts';

export const computeTasks = {
  'plan-shop': {
    lane: 'quick',
    budgetMs: 8_000, // less than its transaction may last
    load: async () => (await import('../planning/plan-tasks.ts')).planShopTask,
  },
  'plan-what-if': {
    lane: 'quick',
    budgetMs: 8_000,
    load: async () => (await import('../planning/plan-tasks.ts')).whatIfTask,
  },
  'fit-driver': {
    lane: 'quick',
    budgetMs: 15_000,
    load: async () => (await import('../measurements/measure-tasks.ts')).fitDriverTask,
  },
  'fit-built-box': {
    lane: 'quick',
    budgetMs: 15_000,
    load: async () => (await import('../measurements/measure-tasks.ts')).fitBuiltBoxTask,
  },
  'car-transfer': {
    lane: 'quick',
    budgetMs: 15_000,
    load: async () => (await import('../measurements/measure-tasks.ts')).carTransferTask,
  },
  'driver-search': {
    lane: 'long',
    budgetMs: 150_000, // a few thousand drivers in every box; people stop it sooner
    load: async () => (await import('../sound-search/search-task.ts')).driverSearchTask,
  },
} as const satisfies ComputeTable;
