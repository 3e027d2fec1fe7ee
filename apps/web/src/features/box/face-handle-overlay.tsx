'use client';

import type { BoxInput } from '@gusset/contracts/box';
import { placeInFrame, type Scene } from '@gusset/drawings';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import styles from './box-drawings.module.css';
import type { BoxJobSheet } from './box-types.ts';
import { draggedOutside, type FaceHandle } from './face-handles.ts';

/** Largest outside of a box that the engine builds; only for what a screen reader says of the range. */
const LARGEST_MM = 3_000;
const SHIFT_STEPS = 10;

export type FaceHandleOverlayProps = {
  readonly scene: Scene;
  readonly handles: readonly FaceHandle[];
  readonly sheet: BoxJobSheet;
  readonly rule: LengthRule;
};

type Grip = {
  readonly clientX: number;
  readonly clientY: number;
  readonly mmPerPx: number;
  readonly outside: BoxInput['outside'];
};

/** Grips on the faces of the box: dragged by hand, or moved by the arrow keys. */
export function FaceHandleOverlay({ scene, handles, sheet, rule }: FaceHandleOverlayProps) {
  const grip = useRef<Grip | null>(null);
  const { world } = scene;
  if (world === null) return null;
  const { input, change } = sheet;

  const take = (event: PointerEvent<HTMLElement>) => {
    const paper = event.currentTarget.parentElement?.parentElement;
    if (!paper || event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus();
    const ptPerPx = scene.widthPt / paper.getBoundingClientRect().width;
    grip.current = {
      clientX: event.clientX,
      clientY: event.clientY,
      mmPerPx: ptPerPx / world.ptPerMm,
      outside: input.outside,
    };
  };
  const drag = (event: PointerEvent<HTMLElement>, handle: FaceHandle) => {
    const held = grip.current;
    if (held === null) return;
    const right = event.clientX - held.clientX;
    const up = held.clientY - event.clientY;
    const handMm = (right * handle.outward.xMm + up * handle.outward.yMm) * held.mmPerPx;
    change({ outside: draggedOutside(held.outside, handle, handMm, rule) });
  };
  const release = () => {
    grip.current = null;
  };
  const step = (event: KeyboardEvent<HTMLElement>, handle: FaceHandle) => {
    const way = KEY_WAYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    const by = handle.moves[0]?.by ?? 1;
    const steps = way * (event.shiftKey ? SHIFT_STEPS : 1);
    change({ outside: draggedOutside(input.outside, handle, (steps * rule.stepMm) / by, rule) });
  };

  return (
    <div>
      {handles.map((handle) => {
        const at = placeInFrame(world, handle.at);
        return (
          <div
            key={handle.id}
            className={styles.handle}
            data-way={Math.abs(handle.outward.xMm) > Math.abs(handle.outward.yMm) ? 'across' : 'up'}
            role="slider"
            tabIndex={0}
            aria-label={handle.label}
            aria-valuemin={0}
            aria-valuemax={LARGEST_MM}
            aria-valuenow={Math.round(handle.valueMm)}
            aria-valuetext={rule.words(handle.valueMm)}
            aria-orientation={handle.outward.yMm === 0 ? 'horizontal' : 'vertical'}
            style={{
              insetInlineStart: `${(at.x / scene.widthPt) * 100}%`,
              insetBlockStart: `${(at.y / scene.heightPt) * 100}%`,
            }}
            onPointerDown={take}
            onPointerMove={(event) => drag(event, handle)}
            onPointerUp={release}
            onPointerCancel={release}
            onKeyDown={(event) => step(event, handle)}
          />
        );
      })}
    </div>
  );
}

const KEY_WAYS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
};
