// The law of the house on ten thousand boxes, with everything that a box can have at once.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyFittings, anyLProfile } from './arbitrary-design.ts';
import { anyPortedDesign } from './arbitrary-ports.ts';
import { buildBox } from './build-box.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const kind = fc.constantFrom('butt' as const, 'rabbet' as const, 'mitre' as const);

const extras = fc.record({
  divider: fc.option(
    fc.record({
      parallelTo: fc.constantFrom('front' as const, 'back' as const, 'bottom' as const, 'left' as const),
      clearMm: mm(40, 300),
      drivers: fc.constantFrom('baffle' as const, 'divider' as const),
      magnets: fc.constantFrom('near' as const, 'far' as const),
    }),
  ),
  kinds: fc.record({ bottomFront: kind, bottomBack: kind, topFront: kind, topBack: kind, others: kind }),
  sidesRabbet: fc.boolean(),
  setBackMm: fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, mm(1, 40)),
  roundOver: fc.option(
    fc.record({
      radiusMm: mm(2, 10),
      edges: fc.constantFrom('sides' as const, 'across' as const, 'all' as const),
    }),
  ),
});

const anyHollow = fc.tuple(anyLProfile, anyFittings).map(([shape, fittings]) => fittings(shape));

const anything: fc.Arbitrary<BoxDesign> = fc
  .tuple(fc.oneof({ weight: 3, arbitrary: anyPortedDesign }, anyHollow), extras)
  .map(([design, { divider, kinds, sidesRabbet, setBackMm, roundOver }]) => ({
    ...design,
    divider,
    roundOver,
    baffle: { ...design.baffle, setBackMm },
    joints: {
      ...design.joints,
      kinds: {
        ...kinds,
        sides: sidesRabbet && design.joints.sides === 'through' ? ('rabbet' as const) : ('butt' as const),
      },
    },
  }));

const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);

describe('ten thousand boxes', () => {
  it('add up: outside = shell + mouths + recess + gross; net = gross - deductions = both chambers', () => {
    let worst = 0;
    fc.assert(
      fc.property(anything, (design) => {
        const box = buildBox(design);
        fc.pre(!isRefusal(box));
        if (isRefusal(box)) return;
        const { volumes } = box;
        const mouths = sum((box.ports ?? []).map(({ mouthLitres }) => mouthLitres));
        const whole = volumes.shellLitres + mouths + (volumes.recessLitres ?? 0) + volumes.grossLitres;
        worst = Math.max(worst, Math.abs(whole / volumes.outsideLitres - 1));
        expect(worst).toBeLessThan(1e-9);
        const nets = (box.chambers ?? []).map(({ netLitres }) => netLitres);
        if (nets.length > 0) expect(sum(nets)).toBeCloseTo(volumes.netLitres, 7);
        const deducted = sum(volumes.deductions.map(({ litres }) => litres));
        expect(volumes.netLitres).toBeCloseTo(volumes.grossLitres - deducted, 9);
        const panels = sum(box.panels.map(({ massKg }) => massKg));
        expect(box.mass.panelsKg).toBeLessThanOrEqual(panels + 1e-9);
      }),
      // About every second design is refused, and replaced.
      { numRuns: 10_000, seed: 91, maxSkipsPerRun: 100, endOnFailure: true },
    );
  }, 120_000);
});
