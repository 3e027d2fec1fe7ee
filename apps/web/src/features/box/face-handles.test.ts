import { describe, expect, it } from 'vitest';
import { draggedOutside, type FaceHandle } from './face-handles.ts';

const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });
const outside = {
  width: length(600),
  height: length(380),
  depth: length(320),
  depthTop: length(220),
  kneeHeight: null,
};
const rule = { stepMm: 1, unit: 'mm' as const, write: String };
const handle = (moves: FaceHandle['moves']): FaceHandle => ({
  id: 'front',
  label: '',
  at: { xMm: 0, yMm: 0 },
  outward: { xMm: 1, yMm: 0 },
  valueMm: 0,
  moves,
});

describe('draggedOutside', () => {
  it('moves a dimension with the hand, to the step of the rule', () => {
    const moved = draggedOutside(outside, handle([{ key: 'height', by: 1 }]), 12.4, rule);
    expect(moved).toEqual({ ...outside, height: length(392) });
  });
  it('moves both depths of a wedge, so that its lean stays', () => {
    const both = handle([
      { key: 'depth', by: 1 },
      { key: 'depthTop', by: 1 },
    ]);
    const moved = draggedOutside(outside, both, -20, rule);
    expect([moved.depth?.mm, moved.depthTop?.mm]).toEqual([300, 200]);
  });
  it('widens by both sides', () => {
    expect(draggedOutside(outside, handle([{ key: 'width', by: 2 }]), 10, rule).width?.mm).toBe(620);
  });
  it('never turns a box inside out', () => {
    expect(draggedOutside(outside, handle([{ key: 'height', by: 1 }]), -900, rule).height?.mm).toBe(1);
  });
  it('keeps sixteenths of an inch as they are', () => {
    const inch = { stepMm: 1.5875, unit: 'in' as const, write: (mm: number) => `${mm / 25.4}` };
    const moved = draggedOutside(outside, handle([{ key: 'depth', by: 1 }]), 1, inch);
    expect((moved.depth?.mm ?? 0) / 1.5875).toBeCloseTo(202, 9);
  });
  it('leaves what is not entered alone', () => {
    const none = { ...outside, depthTop: null, kneeHeight: null };
    expect(draggedOutside(none, handle([{ key: 'depthTop', by: 1 }]), 10, rule)).toEqual(none);
  });
});
