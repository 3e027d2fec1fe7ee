// Engines by the name that the shell calls them. Each is loaded only when it is asked for.
import type { SolveEngine } from './engine.ts';

const ENGINES: Readonly<Record<string, () => Promise<{ readonly engine: SolveEngine }>>> = {
  dryfit: () => import('./engines/dryfit.ts'),
  largest: () => import('./engines/largest.ts'),
  panels: () => import('./engines/panels.ts'),
  plan: () => import('./engines/plan.ts'),
  price: () => import('./engines/price.ts'),
  response: () => import('./engines/response.ts'),
  sheets: () => import('./engines/sheets.ts'),
};

export const ENGINE_NAMES: readonly string[] = Object.keys(ENGINES).sort();

/** Null where no engine has that name. */
export async function loadEngine(name: string): Promise<SolveEngine | null> {
  const load = Object.hasOwn(ENGINES, name) ? ENGINES[name] : undefined;
  return load === undefined ? null : (await load()).engine;
}
