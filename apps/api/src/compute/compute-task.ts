// What a long computation looks like: a pure function of its input and a seed, which may say how far it has come.

export type ComputeTools<Progress> = {
  /** Carried in the request: the same input and seed give the same answer in any thread. */
  readonly seed: number;
  /** Tells whoever asked. May be called as often as is convenient: what comes too soon after the last is dropped. */
  report(progress: Progress): void;
};

/** Input, answer and progress cross threads as structured clones: plain data, no functions, no class instances. */
export type ComputeTask<Input, Output, Progress = never> = (
  input: Input,
  tools: ComputeTools<Progress>,
) => Output | Promise<Output>;

/**
 * `quick`: somebody's transaction waits for it; one thread that long searches never occupy.
 * `long`: a person watches it and may stop it; all cores but one.
 */
export type ComputeLane = 'quick' | 'long';

export type ComputeEntry = {
  readonly lane: ComputeLane;
  /** From the request on, waiting for a thread included: the person waits through both. */
  readonly budgetMs: number;
  /** Imports the function, in the thread only, so that each thread loads just the engines it uses. */
  readonly load: () => Promise<ComputeTask<never, unknown, never>>;
};

export type ComputeTable = Readonly<Record<string, ComputeEntry>>;

type TaskOf<T extends ComputeTable, N extends keyof T> = Awaited<ReturnType<T[N]['load']>>;
export type TaskInput<T extends ComputeTable, N extends keyof T> = Parameters<TaskOf<T, N>>[0];
export type TaskOutput<T extends ComputeTable, N extends keyof T> = Awaited<ReturnType<TaskOf<T, N>>>;
export type TaskProgress<T extends ComputeTable, N extends keyof T> = Parameters<
  Parameters<TaskOf<T, N>>[1]['report']
>[0];
