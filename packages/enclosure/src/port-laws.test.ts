// Boxes with ports obey the law of the house too: outside = wood + mouths + air, nothing lies in anything else, and a
// channel is as empty as its litres say. By addition over a thousand boxes, by solid booleans over some of them.
import type { BoxDesign, BoxResult } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import loadManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyPortedDesign } from './arbitrary-ports.ts';
import { buildBox } from './build-box.ts';
import { mirrorDesign } from './mirror-design.ts';
import { solidOfBody, sweptAcross } from './solid-of-body.ts';

const LITRE_MM3 = 1e6;

function built(design: BoxDesign): BoxResult {
  const box = buildBox(design);
  fc.pre(!isRefusal(box));
  if (isRefusal(box)) throw new Error(box.refusal.why);
  return box;
}

const portsOf = ({ ports }: BoxResult) => ports ?? [];
const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0);
const isInside = (id: string) => /^(brace|port|doubler-inside)/u.test(id);

describe('volumes of a box with ports', () => {
  it('add up: outside = shell + mouths + gross', () => {
    let count = 0;
    fc.assert(
      fc.property(anyPortedDesign, (design) => {
        const box = built(design);
        const { outsideLitres, shellLitres, grossLitres } = box.volumes;
        const mouths = sum(portsOf(box).map(({ mouthLitres }) => mouthLitres));
        expect(Math.abs(shellLitres + mouths + grossLitres - outsideLitres)).toBeLessThan(
          1e-9 * outsideLitres,
        );
        count += 1;
      }),
      { numRuns: 1_000, seed: 41 },
    );
    expect(count).toBeGreaterThanOrEqual(1_000); // refused designs are replaced, not counted
  });

  it('are the same in the mirror', () => {
    fc.assert(
      fc.property(anyPortedDesign, (design) => {
        const box = built(design);
        const mirror = built(mirrorDesign(design));
        expect(mirror.volumes.netLitres).toBeCloseTo(box.volumes.netLitres, 9);
        expect(portsOf(mirror).map(({ lengthMm }) => lengthMm)).toEqual(
          portsOf(box).map(({ lengthMm }) => lengthMm),
        );
      }),
      { numRuns: 100, seed: 42 },
    );
  });
});

describe('ports as solids', () => {
  let wasm: ManifoldToplevel;
  beforeAll(async () => {
    wasm = await loadManifold();
    wasm.setup();
  });

  const check = (design: BoxDesign) => {
    const box = built(design);
    fc.pre(!box.findings.some(({ code }) => /meet/u.test(code)));
    const solids = box.bodies.map((body) => ({ id: body.panelId, solid: solidOfBody(wasm, body) }));
    const outside = sweptAcross(
      wasm,
      box.section.wood,
      -box.sizes.wood.widthMm / 2,
      box.sizes.wood.widthMm / 2,
    );
    const { zMinMm, zMaxMm } = box.plan.inner;
    const air = sweptAcross(wasm, box.section.inner, zMinMm, zMaxMm);
    const hollow = outside.subtract(air);
    const shell = solids.filter(({ id }) => !isInside(id)).map(({ solid }) => solid);
    const together = wasm.Manifold.union(shell);
    const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6 * outside.volume());
    close(together.volume(), sum(shell.map((solid) => solid.volume())));
    close(together.volume(), box.volumes.shellLitres * LITRE_MM3);
    close(together.subtract(hollow).volume(), 0);
    const mouths = sum(portsOf(box).map(({ mouthLitres }) => mouthLitres));
    close(hollow.subtract(together).volume(), mouths * LITRE_MM3);

    const insides = solids.filter(({ id }) => isInside(id)).map(({ solid }) => solid);
    const inside = insides.length === 0 ? null : wasm.Manifold.union(insides);
    if (inside !== null) {
      close(inside.volume(), sum(insides.map((solid) => solid.volume())));
      close(inside.subtract(air).volume(), 0);
    }
    const wood = inside === null ? together : together.add(inside);
    for (const port of portsOf(box)) {
      if (port.section === null || design.ports[port.number - 1]?.kind !== 'slot') continue;
      const slot = design.ports[port.number - 1];
      const heightMm = slot?.kind === 'slot' ? slot.heightMm : Number.NaN;
      const half = (port.openAreaCm2 * 100) / heightMm / 2;
      const middleMm = port.centreLineMm[0]?.z ?? Number.NaN;
      const channel = sweptAcross(wasm, port.section, middleMm - half, middleMm + half);
      close(channel.volume(), port.airLitres * LITRE_MM3);
      close(channel.intersect(wood).volume(), 0);
      const boards = solids.filter(({ id }) => id.startsWith(`port-${port.number}-`));
      const takenMm3 = channel.intersect(air).volume() + sum(boards.map(({ solid }) => solid.volume()));
      close(takenMm3, port.displacedLitres * LITRE_MM3);
      channel.delete();
    }
    for (const { solid } of solids) solid.delete();
    for (const solid of [outside, air, hollow, together]) solid.delete();
  };

  it('leave the shell closed but for their mouths, and their channels empty', () => {
    fc.assert(fc.property(anyPortedDesign, check), { numRuns: 60, seed: 43 });
  });
});
