'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult } from '@gusset/contracts/cargo';
import type { LoadingAnswer } from '@gusset/contracts/dry-fit-sheet';
import { loadingScene, shareOfTightest } from '@gusset/sheets';
import { useEffect, useMemo, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import styles from './loading-panel.module.css';

/** The whole way out takes this long. */
const PLAY_MS = 5_000;
/** For whom movement is too much, a press shows the next of these. */
const STEPS = 6;
const STILL = '(prefers-reduced-motion: reduce)';
const WIDE = { widthPt: 780, heightPt: 460 };
const PHONE = { widthPt: 380, heightPt: 300 };

export type WayPlayerProps = {
  readonly result: BoxSheetResult;
  readonly cavity: CavityResult;
  readonly answer: LoadingAnswer;
  readonly rule: LengthRule;
};

/** The box on its way: ghosts of all of it, the tightest place marked, and the box itself wherever the slider is. */
export function WayPlayer({ result, cavity, answer, rule }: WayPlayerProps) {
  const size = useMediaQuery(PHONE_WIDTH) ? PHONE : WIDE;
  const isStill = useMediaQuery(STILL);
  const [share, setShare] = useState(0);
  const [isPlaying, setIsPlaying] = useState(false);
  const { path, tightest } = answer;

  useEffect(() => {
    if (!isPlaying) return;
    let last: number | null = null;
    let frame = requestAnimationFrame(function step(now: number) {
      const passed = last === null ? 0 : now - last;
      last = now;
      setShare((before) => Math.min(1, before + passed / PLAY_MS));
      frame = requestAnimationFrame(step);
    });
    return () => cancelAnimationFrame(frame);
  }, [isPlaying]);
  useEffect(() => {
    if (share >= 1) setIsPlaying(false);
  }, [share]);

  const scene = useMemo(
    () => loadingScene({ result, cavity, answer, share }, { ...size, formatLength: rule.drawn, textPt: 12 }),
    [result, cavity, answer, share, size, rule],
  );
  const atTightest = useMemo(
    () => (tightest === null ? null : shareOfTightest(path, tightest.pose)),
    [path, tightest],
  );
  const play = () => {
    if (isStill) return setShare((before) => (before >= 1 ? 0 : Math.min(1, before + 1 / STEPS)));
    if (share >= 1) setShare(0);
    setIsPlaying((before) => !before);
  };
  const go = (to: number) => {
    setIsPlaying(false);
    setShare(to);
  };
  const percent = Math.round(share * 100);
  const where = percent === 0 ? 'in its place' : percent === 100 ? 'outside' : `${percent} % of the way out`;
  return (
    <div className={styles.player}>
      <SceneDrawing scene={scene} minWidthPx={300} legend={<Legend answer={answer} />} />
      {path.length < 2 ? null : (
        <div className={styles.controls} data-screen-only="">
          <Button onPress={play}>{playWords(isStill, isPlaying, share)}</Button>
          <label className={styles.slider}>
            <span className="caption">Way out and in</span>
            <input
              type="range"
              min={0}
              max={100}
              step={1}
              value={percent}
              aria-valuetext={where}
              onChange={(event) => go(Number(event.target.value) / 100)}
            />
          </label>
          <output className={styles.where}>{where}</output>
          {atTightest === null ? null : (
            <Button look="quiet" onPress={() => go(atTightest)}>
              Show the tightest place
            </Button>
          )}
        </div>
      )}
    </div>
  );
}

function playWords(isStill: boolean, isPlaying: boolean, share: number): string {
  if (isStill) return share >= 1 ? 'Back to its place' : 'Next step out';
  return isPlaying ? 'Pause' : 'Play the way out';
}

function Legend({ answer }: { readonly answer: LoadingAnswer }) {
  const isNo = answer.verdict === 'does-not-go-in';
  return (
    <>
      {answer.path.length > 1 ? (
        <span className="caption">
          {isNo ? 'thin blue: the way it would take if there were room' : 'thin blue: outlines on the way'}
        </span>
      ) : null}
      {answer.tightest === null ? null : <span className="caption">red: the tightest place</span>}
    </>
  );
}
