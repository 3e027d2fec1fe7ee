import type { SearchAim } from '@gusset/contracts/acoustics';
import { Progress } from '../../../shared/marks/progress.tsx';
import { Verdict } from '../../../shared/marks/verdict.tsx';
import { countWords, type SearchProgress, winnerWords } from './search-words.ts';

export type SearchProgressViewProps = {
  readonly aim: SearchAim;
  readonly progress: SearchProgress | null;
  /** Null = it was stopped. */
  readonly onStop: (() => void) | null;
};

/** How many designs were looked at, and the best one so far. */
export function SearchProgressView({ aim, progress, onStop }: SearchProgressViewProps) {
  const counts = progress?.counts ?? null;
  const soFar =
    progress === null || progress.best === null
      ? undefined
      : `Best so far: ${winnerWords(aim, progress.best)}`;
  if (onStop === null) {
    return (
      <Verdict tone="note" words="Stopped before all designs were tried.">
        {soFar ?? 'Nothing was found until then.'}
      </Verdict>
    );
  }
  return (
    <Progress
      what={
        counts === null
          ? 'Reading the catalogue'
          : `Trying designs: ${countWords(counts.considered)} of ${countWords(counts.designs)}`
      }
      share={counts === null || counts.designs === 0 ? null : counts.considered / counts.designs}
      {...(soFar === undefined ? {} : { soFar })}
      onCancel={onStop}
    />
  );
}
