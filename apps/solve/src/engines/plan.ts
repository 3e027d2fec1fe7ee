// Activities on resources, workers and places, in whole units of time.
import {
  type Project,
  type ProjectSchedule,
  projectScheduleSchema,
  projectSchema,
} from '@gusset/contracts/planning';
import { solveProject } from '@gusset/planning';
import { isRefusal } from '@gusset/units';
import type { SolveEngine } from '../engine.ts';

/** The budget in seconds ends the search; nobody waits for so many schedules. */
const MOST_SCHEDULES = 100_000_000;

export const engine: SolveEngine<Project, ProjectSchedule> = {
  name: 'plan',
  inputSchema: projectSchema,
  outputSchema: projectScheduleSchema,
  solve(project, { seconds, seed }) {
    const startedAt = performance.now();
    const passed = () => (performance.now() - startedAt) / 1_000;
    const answer = solveProject(project, {
      seed,
      schedules: MOST_SCHEDULES,
      shouldStop: () => passed() >= seconds,
    });
    return isRefusal(answer) ? answer : { ...answer, seconds: passed() };
  },
};
