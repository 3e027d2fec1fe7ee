// Looks for the way in beside the page: the verdict, by how much, and what would help where it does not go in.
import { answerLoading, loadingQuestion, loadingRemedies } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import type { LoadingAsked, LoadingNews } from './loading-protocol.ts';

/** Longest for the verdict, then for how much it is by, then for what would help, ms. */
const DECIDE_MS = 8_000;
const MEASURE_MS = 4_000;
const REMEDIES_MS = 15_000;

function look({ input, facts, upstream, result, choices }: LoadingAsked, tell: (news: LoadingNews) => void) {
  const question = loadingQuestion(result, upstream.survey?.cavity ?? null, choices);
  if (isRefusal(question)) {
    const { why, allowed } = question.refusal;
    return tell({ kind: 'refused', why, allowed });
  }
  let endsAt = performance.now() + DECIDE_MS;
  const shouldStop = () => performance.now() > endsAt;
  const answer = answerLoading(question, {
    shouldStop,
    onDecided: (decided) => {
      tell({ kind: 'decided', answer: decided });
      endsAt = performance.now() + MEASURE_MS;
    },
  });
  if (isRefusal(answer)) {
    const { why, allowed } = answer.refusal;
    return tell({ kind: 'refused', why, allowed });
  }
  tell({ kind: 'answer', answer });
  if (answer.verdict !== 'goes-in') {
    endsAt = performance.now() + REMEDIES_MS;
    loadingRemedies(
      { input, facts, upstream, choices },
      {
        shouldStop,
        onProgress: (share) => tell({ kind: 'trying', share }),
        onFound: (remedy) => tell({ kind: 'remedy', remedy }),
      },
    );
  }
  tell({ kind: 'done' });
}

self.addEventListener('message', (event: MessageEvent<LoadingAsked>) => {
  look(event.data, (news) => self.postMessage(news));
});
