import type { AppRouter } from '@gusset/api/router';
import type { inferRouterInputs, inferRouterOutputs } from '@trpc/server';

/** The whole API as types; the only file of the app that imports from it. Nothing of it reaches the browser. */
export type { AppRouter };
export type ApiInputs = inferRouterInputs<AppRouter>;
export type ApiOutputs = inferRouterOutputs<AppRouter>;
