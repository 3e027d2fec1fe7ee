import type { StoryClock } from './quiet-deps.ts';

/** One thing that happened. What it needs of earlier ones it looks up when it is told. */
export type StoryStep = { readonly at: Date; readonly tell: () => Promise<void> };

/** Tells everything in the order in which it happened, across all jobs, with the clock at each moment. */
export async function tellStory(story: StoryClock, steps: readonly StoryStep[]): Promise<void> {
  const inOrder = [...steps].sort((a, b) => a.at.getTime() - b.at.getTime()); // stable: as written where equal
  for (const { at, tell } of inOrder) {
    story.moveTo(at);
    await tell();
  }
}
