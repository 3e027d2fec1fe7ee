// The law of the house: outside = wood + air, and no panel lies in another. Checked by addition over thousands of
// boxes, and against solid booleans of `manifold-3d` over some of them.
import type { BoxDesign, BoxResult } from '@gusset/contracts/enclosure';
import type { PanelHole } from '@gusset/contracts/panel';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import loadManifold, { type ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { anyDesign } from './arbitrary-design.ts';
import { buildBox } from './build-box.ts';
import { HALDEN_TWIN } from './example-designs.ts';
import { solidOfBody, sweptAcross } from './solid-of-body.ts';

const LITRE_MM3 = 1e6;

function built(design: BoxDesign): BoxResult {
  const box = buildBox(design);
  fc.pre(!isRefusal(box));
  if (isRefusal(box)) throw new Error(box.refusal.why);
  return box;
}

const areaMm2 = (hole: PanelHole) =>
  hole.shape === 'circle'
    ? (Math.PI * hole.diameterMm ** 2) / 4
    : hole.widthMm * hole.heightMm - (4 - Math.PI) * hole.cornerRadiusMm ** 2;

/** Wood that the holes of a panel took, a recess before what goes through its floor. */
function holesMm3(holes: readonly PanelHole[], thicknessMm: number): number {
  const recesses = holes.filter((hole) => hole.depthMm !== null);
  return holes.reduce((sum, hole) => {
    if (hole.depthMm !== null) return sum + areaMm2(hole) * hole.depthMm;
    const above = recesses.find(
      (recess) =>
        recess.shape === 'circle' &&
        Math.hypot(recess.centreXMm - hole.centreXMm, recess.centreYMm - hole.centreYMm) <
          recess.diameterMm / 2,
    );
    return sum + areaMm2(hole) * (thicknessMm - (above?.depthMm ?? 0));
  }, 0);
}

function shellIds(box: BoxResult): Set<string> {
  const outer = box.bodies.filter(
    ({ role, panelId }) => role !== 'brace' && !panelId.startsWith('doubler-inside'),
  );
  return new Set(outer.map(({ panelId }) => panelId));
}

describe('volumes of a box', () => {
  it('add up: outside = shell + gross', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const { outsideLitres, shellLitres, grossLitres } = built(design).volumes;
        expect(Math.abs(shellLitres + grossLitres - outsideLitres)).toBeLessThan(1e-9 * outsideLitres);
      }),
      { numRuns: 1_000, seed: 11 },
    );
  });

  it('add up: outside = every panel and strip + what was cut out + the air between them', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const box = built(design);
        const solid = box.panels.reduce((sum, panel) => sum + panel.solidMm3, 0) / LITRE_MM3;
        const holes =
          box.panels
            .filter(({ id }) => !id.startsWith('brace'))
            .reduce((sum, panel) => sum + holesMm3(panel.holes, panel.thicknessMm), 0) / LITRE_MM3;
        const taken = (code: string) =>
          box.volumes.deductions.filter((it) => it.code === code).reduce((sum, it) => sum + it.litres, 0);
        const strips = box.cornerBlocks.reduce((sum, block) => sum + block.litres, 0);
        expect(strips).toBeCloseTo(taken('corner-block'), 9);
        const air =
          box.volumes.grossLitres - taken('inside-doubler') - taken('brace') - taken('corner-block');
        const whole = solid + strips + holes + air;
        expect(Math.abs(whole - box.volumes.outsideLitres)).toBeLessThan(1e-6 * box.volumes.outsideLitres);
      }),
      { numRuns: 1_000, seed: 12 },
    );
  });

  it('are net = gross - every deduction', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const { grossLitres, netLitres, deductions } = built(design).volumes;
        const deducted = deductions.reduce((sum, { litres }) => sum + litres, 0);
        expect(netLitres).toBeCloseTo(grossLitres - deducted, 9);
      }),
      { numRuns: 200, seed: 13 },
    );
  });
});

describe('panels as solids', () => {
  let wasm: ManifoldToplevel;
  beforeAll(async () => {
    wasm = await loadManifold();
    wasm.setup();
  });

  const check = (design: BoxDesign) => {
    const box = built(design);
    const inShell = shellIds(box);
    const bodies = box.bodies.map((body) => ({ body, solid: solidOfBody(wasm, body) }));
    const shell = bodies.filter(({ body }) => inShell.has(body.panelId)).map(({ solid }) => solid);
    const half = box.sizes.wood.widthMm / 2;
    const outside = sweptAcross(wasm, box.section.wood, -half, half);
    const air = sweptAcross(wasm, box.section.inner, box.plan.inner.zMinMm, box.plan.inner.zMaxMm);
    const together = wasm.Manifold.union(shell);
    const hollow = outside.subtract(air);
    const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6 * outside.volume());

    close(outside.volume(), box.volumes.outsideLitres * LITRE_MM3);
    close(air.volume(), box.volumes.grossLitres * LITRE_MM3);
    for (const { body, solid } of bodies) {
      const panel = box.panels.find(({ id }) => id === body.panelId);
      close(solid.volume(), (panel?.solidMm3 ?? 0) + holesMm3(panel?.holes ?? [], body.thicknessMm));
    }
    // No overlap: the union is as large as the sum. No gap: it is the hollow body.
    close(
      together.volume(),
      shell.reduce((sum, solid) => sum + solid.volume(), 0),
    );
    close(together.subtract(hollow).volume(), 0);
    close(hollow.subtract(together).volume(), 0);
    // Everything else stands in the air, without touching anything else there.
    const insides = bodies.filter(({ body }) => !inShell.has(body.panelId)).map(({ solid }) => solid);
    if (insides.length > 0) {
      const inside = wasm.Manifold.union(insides);
      close(
        inside.volume(),
        insides.reduce((sum, solid) => sum + solid.volume(), 0),
      );
      close(inside.subtract(air).volume(), 0);
      inside.delete();
    }
    for (const { solid } of bodies) solid.delete();
    for (const solid of [outside, air, together, hollow]) solid.delete();
  };

  it('fill the carcass without gap or overlap, in any shape', () => {
    fc.assert(fc.property(anyDesign, check), { numRuns: 40, seed: 21 });
  });

  it('fill the carcass of the twin for the Halden', () => {
    check(HALDEN_TWIN);
  });
});
