// The door to the enclosure engine reads designs as they were kept before boxes had ports, and everything since.
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { engine } from './panels.ts';

const bare = {
  id: 'box',
  shape: { kind: 'rectangular', widthMm: 700, heightMm: 380, depthMm: 420 },
  stock: { carcass: { materialId: 'mdf-18', thicknessMm: 18, densityKgM3: 720 } },
  baffle: { face: 'front', doubler: null },
  bracing: { kind: 'none' },
  sealantLitres: 0,
};

const OPTIONS = { seconds: 1, seed: 1 };

async function solved(line: unknown) {
  const box = await engine.solve(engine.inputSchema.parse(line), OPTIONS);
  if (isRefusal(box)) throw new Error(box.refusal.why);
  return engine.outputSchema.parse(box);
}

describe('panels', () => {
  it('builds a design that was kept with no port', async () => {
    const box = await solved({ ...bare, port: null });
    expect(box.volumes.netLitres).toBeCloseTo(87.711744, 9);
    expect(box.ports).toBeUndefined();
    expect(box.chambers).toBeUndefined();
  });

  it('builds a ported box of two chambers', async () => {
    const box = await solved({
      ...bare,
      divider: { parallelTo: 'back', clearMm: 120 },
      ports: [{ kind: 'slot', face: 'front', along: 'bottom', heightMm: 30, lengthMm: 200 }],
    });
    expect(box.ports).toHaveLength(1);
    expect(box.chambers?.map(({ place }) => place)).toEqual(['near', 'far']);
    expect(box.panels.map(({ id }) => id)).toContain('divider');
  });

  it('refuses a slot that is shorter than the wood it goes through', async () => {
    const line = {
      ...bare,
      ports: [{ kind: 'slot', face: 'front', along: 'bottom', heightMm: 30, lengthMm: 12 }],
    };
    const answer = await engine.solve(engine.inputSchema.parse(line), OPTIONS);
    expect(isRefusal(answer) && answer.refusal.field).toBe('ports[0].lengthMm');
  });
});
