// Tries seed after seed beside the page until its time is up, and tells the best so far; the page may end it any time.
import { betterOf, boardScores, cuttingSheet, withSeed } from '@gusset/sheets';
import type { ImproveNews, ImproveQuestion } from './improve-protocol.ts';

const TELL_EVERY_MS = 120;
const MOST_SEEDS = 5_000;

function improve(
  { input, facts, upstream, seconds }: ImproveQuestion,
  tell: (news: ImproveNews) => void,
): void {
  const startedAt = performance.now();
  const first = cuttingSheet.compute(input, facts, upstream);
  if (first.state !== 'ready') {
    tell({ isDone: true, share: 1, tried: 0, start: [], best: [] });
    return;
  }
  const boardIds = first.result.boards.map(({ boardId }) => boardId);
  const start = boardScores(first.result, input.aim);
  let best = start;
  let toldAt = startedAt;
  let tried = 0;
  for (let seed = 1; seed <= MOST_SEEDS; seed++) {
    const now = performance.now();
    const share = (now - startedAt) / (seconds * 1_000);
    if (share >= 1) break;
    if (now - toldAt > TELL_EVERY_MS) {
      tell({ isDone: false, share, tried, start, best });
      toldAt = now;
    }
    const next = cuttingSheet.compute(withSeed(input, boardIds, seed), facts, upstream);
    tried += 1;
    if (next.state === 'ready') best = betterOf(best, boardScores(next.result, input.aim));
  }
  tell({ isDone: true, share: 1, tried, start, best });
}

self.addEventListener('message', (event: MessageEvent<ImproveQuestion>) => {
  improve(event.data, (news) => self.postMessage(news));
});
