import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildBox } from './build-box.ts';
import { built } from './built-box.ts';
import { BARE_BOX, BARE_WEDGE, example } from './example-designs.ts';

type Edges = 'sides' | 'across' | 'all';

const rounded = (edges: Edges, design = BARE_BOX, radiusMm = 12) =>
  built(example({ ...design, roundOver: { radiusMm, edges } }));

describe('round-overs', () => {
  it('across a right-angled box take four strips of (1 - π/4) r²', () => {
    const box = rounded('across');
    expect(box.volumes.roundedOffLitres).toBeCloseTo((4 * (1 - Math.PI / 4) * 144 * 700) / 1e6, 9);
  });

  it('all round a right-angled box leave the rounded block of the textbooks', () => {
    const [a, b, c, r] = [700 - 24, 380 - 24, 420 - 24, 12];
    const block =
      a * b * c +
      2 * r * (a * b + b * c + c * a) +
      Math.PI * r ** 2 * (a + b + c) +
      (4 / 3) * Math.PI * r ** 3;
    expect(rounded('all').volumes.roundedOffLitres).toBeCloseTo((700 * 380 * 420 - block) / 1e6, 9);
  });

  it('round the sides of a wedge agree with its slices', () => {
    // Slices of the side view, every wall moved in: 500 and 300 deep, 400 high, front leaning by θ, tan θ = 1/2.
    const [steps, r] = [20_000, 12];
    const lean = Math.hypot(200, 400) / 400;
    const slices = Array.from({ length: steps }, (_, step) => {
      const u = r * (1 - (step + 0.5) / steps);
      const f = r - Math.sqrt(r ** 2 - u ** 2);
      const [low, high] = [500 - f / 2, 300 + f / 2].map((depthMm) => depthMm - f - f * lean);
      const areaMm2 = (((low ?? 0) + (high ?? 0)) / 2) * (400 - 2 * f);
      return ((160_000 - areaMm2) * r) / steps;
    });
    const sum = 2 * slices.reduce((total, slice) => total + slice, 0);
    const litres = rounded('sides', BARE_WEDGE).volumes.roundedOffLitres ?? Number.NaN;
    expect(Math.abs(litres * 1e6 - sum) / sum).toBeLessThan(1e-6);
  });

  it('lighten the box and leave its air and its balance', () => {
    const [sharp, soft] = [built(BARE_BOX), rounded('all')];
    const litres = soft.volumes.roundedOffLitres ?? Number.NaN;
    expect(sharp.mass.emptyKg - soft.mass.emptyKg).toBeCloseTo(litres * 0.72, 9);
    expect(soft.mass.emptyCentreMm.x).toBeCloseTo(sharp.mass.emptyCentreMm.x, 9);
    expect(soft.volumes.netLitres).toBe(sharp.volumes.netLitres);
  });

  it('are refused where they would go through to the joint', () => {
    const box = buildBox(example({ ...BARE_BOX, roundOver: { radiusMm: 18 } }));
    expect(isRefusal(box) && box.refusal).toEqual({
      field: 'roundOver.radiusMm',
      allowed: '1 to 15 mm',
      got: 18,
      why: 'a board of 18 mm, or the shortest wall, has 3 mm too little for it',
    });
  });
});
