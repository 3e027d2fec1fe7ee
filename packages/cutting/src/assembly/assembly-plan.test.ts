import { USUAL_ADHESIVES } from '@gusset/contracts/cutting';
import type { BoxResult, PanelBody } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { type AssemblyQuestion, assemblyPlan } from './assembly-plan.ts';
import { curingFactor } from './curing-factor.ts';

const SQUARE = [
  { xMm: 0, yMm: 0 },
  { xMm: 500, yMm: 0 },
  { xMm: 500, yMm: 400 },
  { xMm: 0, yMm: 400 },
];
const X = { x: 1, y: 0, z: 0 };

function body(mark: string, role: PanelBody['role'], face: PanelBody['face']): PanelBody {
  return {
    panelId: mark.toLowerCase(),
    mark,
    role,
    face,
    placement: { originMm: X, xAxis: X, yAxis: X, normal: X },
    thicknessMm: 18,
    outerFace: SQUARE,
    innerFace: SQUARE,
    edgeLeans: ['square', 'square', 'square', 'square'],
    section: null,
  };
}

const BODIES = [
  body('A', 'wall', 'bottom'),
  body('B', 'baffle', 'front'),
  body('C', 'wall', 'top'),
  body('D', 'wall', 'back'),
  body('E', 'side', 'left'),
  body('F', 'side', 'right'),
  body('G', 'doubler', 'front'),
  body('H', 'brace', null),
];
const WALLS = ['bottom', 'front', 'top', 'back'] as const;
const SEAMS: BoxResult['joints']['seams'] = WALLS.flatMap((face, index) => [
  { between: [face, WALLS[(index + 1) % 4] ?? 'bottom'], lengthMm: 700, screws: 5 },
  { between: [face, 'left'], lengthMm: 400, screws: 3 },
  { between: [face, 'right'], lengthMm: 400, screws: 3 },
]);
const QUESTION: AssemblyQuestion = {
  design: { ports: [], roundOver: null },
  box: {
    bodies: BODIES,
    cornerBlocks: [],
    panels: [],
    joints: { seams: SEAMS, shellSeamMm: 6_000, braceSeamMm: 1_400, laminatedM2: 0.2, screws: 60 },
  },
  adhesive: USUAL_ADHESIVES.pva,
  temperatureC: 20,
};

function planned(change: Partial<AssemblyQuestion> = {}) {
  const plan = assemblyPlan({ ...QUESTION, ...change });
  if (isRefusal(plan)) throw new Error(plan.refusal.why);
  return plan;
}

describe('assembly', () => {
  it('closes the box last, after it has been tried in the vehicle', () => {
    const plan = planned();
    expect(plan.steps.map(({ what }) => what)).toEqual([
      'laminate',
      'dry',
      'glue',
      'glue',
      'glue',
      'strips',
      'try',
      'close',
      'leak',
      'flush',
    ]);
    expect(plan.steps.filter(({ what }) => what === 'glue').map(({ marks }) => marks)).toEqual([
      ['E', 'A', 'D'],
      ['H'],
      ['B', 'C'],
    ]);
    expect(plan).toMatchObject({ baseMark: 'E', closingMark: 'F' });
  });

  it('glues every seam once, and puts every panel in once', () => {
    const plan = planned();
    const glued = plan.steps.reduce((sum, { seamMm }) => sum + seamMm, 0);
    expect(glued).toBe(6_000 + 1_400);
    expect(plan.steps.reduce((sum, { screws }) => sum + screws, 0)).toBe(60);
    const put = plan.steps.filter(({ what }) => ['laminate', 'glue', 'close'].includes(what));
    expect(put.flatMap(({ marks }) => marks).toSorted()).toEqual(BODIES.map(({ mark }) => mark));
  });

  it('lays the side down that carries a slot', () => {
    const slot = {
      kind: 'slot',
      face: 'front',
      along: 'right',
      heightMm: 40,
      widthMm: null,
      acrossMm: null,
      lengthMm: 400,
      bendsAllowed: 0,
    } as const;
    expect(planned({ design: { ports: [slot], roundOver: null } })).toMatchObject({
      baseMark: 'F',
      closingMark: 'E',
    });
  });

  it('waits longer in the cold, and refuses where the glue fails', () => {
    expect([25, 20, 15, 12, 10].map(curingFactor)).toEqual([1, 1, 1.5, 2, 2]);
    expect(curingFactor(17.5)).toBe(1.25);
    expect(planned({ temperatureC: 15 }).waitMinutes).toBe(planned().waitMinutes * 1.5);
    expect(assemblyPlan({ ...QUESTION, temperatureC: 8 })).toMatchObject({
      refusal: { field: 'temperatureC', got: 8 },
    });
  });
});
