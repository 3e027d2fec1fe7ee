import type { ApiOutputs } from '../../shared/data/api-types.ts';

/** The built box beside its drawing, as the API answers it. */
export type BuiltBox = ApiOutputs['measurement']['job']['compare'];
