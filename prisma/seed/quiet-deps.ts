// The parts of the program as the demo uses them: mail is written to the outbox but never leaves, because nobody in the
// demo has a mailbox, and the clock is put back so that things happened when the story says.
import type { Deps } from '@gusset/api/deps';

export type StoryClock = {
  /** What happens next, happens then. */
  moveTo(moment: Date): void;
};

export function quietDeps(deps: Deps): { readonly deps: Deps; readonly story: StoryClock } {
  let moment = deps.clock.now();
  const quiet: Deps = {
    ...deps,
    clock: { now: () => moment },
    queue: {
      ...deps.queue,
      ask: async () => undefined,
      askNow: async () => undefined,
    },
  };
  return {
    deps: quiet,
    story: {
      moveTo(next) {
        moment = next;
      },
    },
  };
}
