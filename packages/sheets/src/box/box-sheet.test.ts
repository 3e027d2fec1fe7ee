import type { BoxInput } from '@gusset/contracts/box';
import { EMPTY_PORT, type SoundPort } from '@gusset/contracts/sound';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { changedFigures } from '../sheet-definition.ts';
import {
  BOX_FACTS,
  BOX_INPUT,
  BOX_UPSTREAM,
  boxOutcome,
  boxResult,
  CARPET_ID,
  length,
  MDF,
  PLY_ID,
  QUINCE,
  soundResult,
  squareCavity,
} from './box-fixture.ts';
import { boxSheet } from './box-sheet.ts';
import { boxWithNet } from './box-sizing.ts';

const NOTHING = {
  carcass: null,
  baffle: null,
  finishes: [],
  driver: null,
  clearances: BOX_FACTS.clearances,
  payloadKg: null,
};
const outside = BOX_INPUT.outside;

describe('the volumes of the box sheet', () => {
  it('are the inside less the driver and the sealant', () => {
    // 564 × 344 × 284 mm = 55.100544 L; the driver takes its maker's 2 L, the sealant 0.1 L.
    const { volumes } = boxResult().box;
    expect(volumes.grossLitres).toBeCloseTo(55.100544, 9);
    expect(volumes.netLitres).toBeCloseTo(53.000544, 9);
  });
  it('stand against the net volume that the sound sheet wants', () => {
    expect(boxResult().box.volumes.overTargetLitres).toBeCloseTo(23.000544, 9);
    const wanted = { ...BOX_UPSTREAM, sound: soundResult({ targetNet: { litres: 53, typed: '53' } }) };
    expect(boxResult({}, BOX_FACTS, wanted).box.volumes.overTargetLitres).toBeCloseTo(0.000544, 9);
  });
  it('take a driver off for each one that the sound sheet counts', () => {
    const two = { ...BOX_UPSTREAM, sound: soundResult({ count: 2 }) };
    const result = boxResult({}, BOX_FACTS, two);
    expect(result.driver).toEqual({ id: QUINCE.id, name: 'Quince Q-10', count: 2 });
    expect(result.box.volumes.netLitres).toBeCloseTo(51.000544, 9);
  });
  it('fall as the board gets thicker', () => {
    const thick = { ...MDF, figures: { ...MDF.figures, measuredThicknessMm: 18.6 } };
    const { netLitres } = boxResult({}, { ...BOX_FACTS, carcass: thick }).box.volumes;
    expect(netLitres).toBeLessThan(boxResult().box.volumes.netLitres);
  });
});

describe('ports of sheet 03', () => {
  const vented = (port: Partial<SoundPort>) => ({
    ...BOX_UPSTREAM,
    sound: soundResult({
      enclosure: 'vented',
      port: { ...EMPTY_PORT, tuning: { value: 34, typed: '34' }, ...port },
    }),
  });

  it('take a pipe’s outside off, as long as its tuning asks for', () => {
    const upstream = vented({ diameter: length(76) });
    const { box } = boxResult({}, BOX_FACTS, upstream);
    const lengthMm = upstream.sound.ports[0]?.lengthMm ?? Number.NaN;
    const port = box.volumes.deductions.find(({ code }) => code === 'port');
    expect(port?.litres).toBeCloseTo((Math.PI * 42 ** 2 * (lengthMm - 18)) / 1e6, 9);
    expect(box.volumes.netLitres).toBeCloseTo(53.000544 - (port?.litres ?? 0), 9);
  });

  it('lay a slot on the floor behind the baffle', () => {
    const { box } = boxResult(
      {},
      BOX_FACTS,
      vented({ shape: 'slot', width: length(200), height: length(30) }),
    );
    expect(box.ports?.[0]).toMatchObject({ kind: 'slot', face: 'front', openAreaCm2: 60 });
    expect(box.panels.map(({ id }) => id)).toContain('port-1-cheek-left');
  });

  it('say at the width that a slot is wider than the box', () => {
    const outcome = boxOutcome(
      {},
      BOX_FACTS,
      vented({ shape: 'slot', width: length(700), height: length(20) }),
    );
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'outside.width', got: 700 }] });
  });
});

describe('a box that cannot be', () => {
  it('says which dimension and by how much, at its field', () => {
    const outcome = boxOutcome({ outside: { ...outside, depth: length(40) } });
    expect(outcome).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'outside.depth', got: 40, allowed: '60 to 3000 mm' }],
    });
  });
  it('says at the top of a wedge that it is deeper than the bottom', () => {
    const outcome = boxOutcome({ shape: 'wedge', outside: { ...outside, depthTop: length(400) } });
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'outside.depthTop' }] });
  });
  it('says at the corner blocks that their legs are too long', () => {
    const outcome = boxOutcome({ cornerBlocks: { leg: length(400), seams: 'all' } });
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'cornerBlocks.leg' }] });
  });
  it('says at the places of the drivers that there are too few', () => {
    const drivers = { ...BOX_INPUT.drivers, positions: [{ across: length(0), up: length(190) }] };
    const two = { ...BOX_UPSTREAM, sound: soundResult({ count: 2 }) };
    expect(boxOutcome({ drivers }, BOX_FACTS, two)).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'drivers.positions', allowed: '2 positions' }],
    });
  });
});

describe('what is missing', () => {
  it('is named field by field', () => {
    const outcome = boxSheet.compute(boxSheet.emptyInput(), NOTHING, {});
    expect(outcome).toMatchObject({
      state: 'incomplete',
      missing: [
        { field: 'outside.width' },
        { field: 'outside.height' },
        { field: 'outside.depth' },
        { field: 'carcassId' },
      ],
    });
  });
  it('is the top of a wedge, a board and a finish that left the catalogue', () => {
    const finishes = { ...BOX_INPUT.finishes, top: PLY_ID };
    const outcome = boxOutcome({ shape: 'wedge', baffleId: PLY_ID, finishes });
    expect(outcome).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'outside.depthTop' }, { field: 'baffleId' }, { field: 'finishes' }],
    });
  });
  it('is nothing that keeps a box without a driver or a survey from being drawn', () => {
    const result = boxResult({}, { ...BOX_FACTS, driver: null }, {});
    expect(result.driver).toBeNull();
    expect(result.place).toBeNull();
    expect(result.notes).toEqual([{ code: 'no-survey' }]);
    expect(result.box.volumes.targetNetLitres).toBeNull();
  });
});

describe('the place in the car', () => {
  it('keeps the wanted gap to the wall behind it and stands on the floor', () => {
    const { place } = boxResult();
    expect(place?.pose.xMm).toBeCloseTo(15, 5);
    expect(place?.pose).toMatchObject({ yMm: 0, thetaRad: 0, zMm: 0 });
    const behind = place?.placement.clearances.find(({ surface }) => surface.role === 'seat-back');
    expect(behind?.clearanceMm).toBeCloseTo(15, 5);
    expect(behind?.verdict).toBe('clear');
    expect(place?.placement.fits).toBe(true);
  });
  it('goes square through an opening 950 wide with 350 to spare', () => {
    expect(boxResult().place?.opening).toMatchObject({ verdict: 'passes', widthSpareMm: 350 });
  });
  it('counts the finish: 4 mm of carpet on both sides takes 8 off the way through', () => {
    const finishes = { ...BOX_INPUT.finishes, left: CARPET_ID, right: CARPET_ID };
    expect(boxResult({ finishes }).place?.opening.widthSpareMm).toBeCloseTo(342, 9);
  });
  it('moves the finished middle off the centre line when one side is covered', () => {
    const finishes = { ...BOX_INPUT.finishes, left: CARPET_ID };
    const { place } = boxResult({ finishes });
    expect(place?.pose.zMm).toBe(2);
    const sides = place?.placement.clearances.filter(({ surface }) => surface.type === 'side') ?? [];
    expect(sides.map(({ clearanceMm }) => clearanceMm).sort((a, b) => a - b)).toEqual([196, 200]);
  });
  it('says by how much a box is too deep for the space', () => {
    const result = boxResult({ outside: { ...outside, height: length(520) } });
    expect(result.place?.placement.fits).toBe(false);
    expect(result.place?.placement.overlapping[0]?.byMm).toBeCloseTo(20, 6);
  });
  it('is a note when the section has no such wall', () => {
    const result = boxResult({ place: { by: 'rest', back: 'cab-wall', gap: null } });
    expect(result.place).toBeNull();
    expect(result.notes[0]).toMatchObject({ code: 'no-place' });
  });
  it('is where it was typed', () => {
    const place = { by: 'pose', x: length(100), y: length(10), tiltDeg: 90 } as const;
    const pose = boxResult({ place }).place?.pose;
    expect(pose).toMatchObject({ xMm: 100, yMm: 10 });
    expect(pose?.thetaRad).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('the notes of the box sheet', () => {
  it('say that a thickness is only nominal, and the sheet is then draft', () => {
    const nominal = { ...MDF, figures: { ...MDF.figures, measuredThicknessMm: null } };
    const result = boxResult({}, { ...BOX_FACTS, carcass: nominal });
    expect(result.isDraft).toBe(true);
    expect(result.carcass.isMeasured).toBe(false);
    expect(result.notes).toContainEqual({ code: 'thickness-nominal', stock: 'carcass', name: 'MDF 18' });
    expect(boxResult().isDraft).toBe(false);
  });
  it('say that a magnet was taken as wide as the cut-out', () => {
    const driver = { ...QUINCE, figures: { ...QUINCE.figures, magnetDiaMm: null } };
    expect(boxResult({}, { ...BOX_FACTS, driver }).notes).toContainEqual({
      code: 'driver-figure-assumed',
      figure: 'magnet',
      mm: 236,
    });
  });
  it('say that the box is more than the car may carry', () => {
    const { notes, box } = boxResult({}, { ...BOX_FACTS, payloadKg: 10 });
    expect(notes).toContainEqual({ code: 'payload-over', boxKg: box.mass.withDriversKg, payloadKg: 10 });
  });
});

describe('what others read', () => {
  it('adds up the finish without the openings', () => {
    const { front } = BOX_INPUT.finishes;
    expect(front).toBeNull();
    const finishes = { ...BOX_INPUT.finishes, top: CARPET_ID, front: CARPET_ID };
    const { finishTotals, box } = boxResult({ finishes });
    const openings = box.finishAreas.find(({ face }) => face === 'front')?.openingsM2 ?? 0;
    expect(openings).toBeGreaterThan(0.04);
    expect(finishTotals[0]?.areaM2).toBeCloseTo(0.6 * 0.32 + 0.6 * 0.38 - openings, 9);
  });
  it('lists a changed width with its old and new value', () => {
    const wide = boxResult({ outside: { ...outside, width: length(640) } });
    const changes = changedFigures('04 Box', boxSheet.keyFigures(boxResult()), boxSheet.keyFigures(wide));
    expect(changes).toContainEqual({
      source: '04 Box',
      label: 'Outside width',
      before: '600 mm',
      after: '640 mm',
    });
    expect(changes.map(({ label }) => label)).toContain('Net volume');
  });
  it('lists a changed figure of the driver', () => {
    const driver = { ...QUINCE, figures: { ...QUINCE.figures, cutoutDiaMm: 238 } };
    const before = boxSheet.factFigures(BOX_FACTS);
    const after = boxSheet.factFigures({ ...BOX_FACTS, driver });
    expect(changedFigures('Records', before, after)).toEqual([
      { source: 'Records', label: 'Quince Q-10 · cut-out', before: '236 mm', after: '238 mm' },
    ]);
  });
  it('survives storage as JSON unchanged', () => {
    const leaning = { ...outside, depthTop: length(220) };
    const results = [boxResult(), boxResult({ shape: 'wedge', outside: leaning })];
    expect(JSON.parse(JSON.stringify(results))).toEqual(results);
  });
  it('accepts its own input and what a new sheet starts with', () => {
    expect(boxSheet.inputSchema.parse(BOX_INPUT)).toEqual(BOX_INPUT);
    expect(boxSheet.inputSchema.parse(boxSheet.emptyInput())).toEqual(boxSheet.emptyInput());
  });
  it('comes out the same for a shallower space, but stands nearer its end', () => {
    const shallow = { ...BOX_UPSTREAM, survey: { cavity: squareCavity(400) } };
    const [here, there] = [boxResult(), boxResult({}, BOX_FACTS, shallow)];
    expect(there.box).toEqual(here.box);
    expect(there.place?.placement.clearances).not.toEqual(here.place?.placement.clearances);
  });
});

describe('shapes beyond four walls', () => {
  const outside = { width: length(600), height: length(380), depth: length(400), depthTop: length(200) };

  it('builds an L: its air by hand', () => {
    // Inside 18 mm board: foot 364 x 114, upright 164 x 230 above it, 564 wide: (41,496 + 37,720) x 564 = 44.677824 L.
    for (const slopedFace of ['front', 'back'] as const) {
      const { box, design } = boxResult({
        shape: 'l',
        slopedFace,
        outside: { ...outside, kneeHeight: length(150) },
        drivers: { ...BOX_INPUT.drivers, mount: 'surface' },
      });
      expect(design.shape.kind).toBe('profile');
      expect(box.volumes.grossLitres).toBeCloseTo(44.677824, 6);
      expect(box.panels.length).toBe(8);
    }
  });

  it('builds a clipped wedge with its drivers in the leaning wall', () => {
    const { box, design } = boxResult({
      shape: 'clipped-wedge',
      slopedFace: 'front',
      outside: { ...outside, kneeHeight: length(100) },
      baffle: { face: 'slope-1', doubler: null },
    });
    expect(design.baffle.face).toBe('slope-1');
    const [driver] = box.drivers;
    expect(driver?.axis.y).toBeGreaterThan(0.3);
    expect(box.bodies.some(({ role, face }) => role === 'baffle' && face === 'slope-1')).toBe(true);
  });

  it('asks for the knee, and refuses one that is too high at its field', () => {
    const missing = boxOutcome({ shape: 'clipped-wedge', outside: { ...outside, kneeHeight: null } });
    expect(missing).toMatchObject({ state: 'incomplete', missing: [{ field: 'outside.kneeHeight' }] });
    const refusal = boxOutcome({ shape: 'clipped-wedge', outside: { ...outside, kneeHeight: length(500) } });
    expect(refusal).toMatchObject({ state: 'refused', refusals: [{ field: 'outside.kneeHeight' }] });
  });

  it('covers slopes with their own finish, and counts it', () => {
    const changes: Partial<BoxInput> = {
      shape: 'clipped-wedge',
      outside: { ...outside, kneeHeight: length(100) },
      finishes: { ...BOX_INPUT.finishes, slopes: CARPET_ID },
    };
    const { box, finishTotals, design } = boxResult(changes);
    const area = box.finishAreas.find(({ face }) => face === 'slope-1');
    expect(design.finish.slopesMm).toBe(4);
    expect(finishTotals[0]?.areaM2).toBeCloseTo((area?.areaM2 ?? 0) - (area?.openingsM2 ?? 0), 9);
  });

  it('sets the depth of an L so that the air meets its target', () => {
    const input = { ...BOX_INPUT, shape: 'l' as const, outside: { ...outside, kneeHeight: length(150) } };
    const found = boxWithNet(input, BOX_FACTS, BOX_UPSTREAM, 'width');
    if (isRefusal(found)) throw new Error(found.refusal.why);
    expect(boxResult(found).box.volumes.overTargetLitres).toBeCloseTo(0, 1);
    expect(found.outside.kneeHeight?.mm).toBe(150);
  });
});

describe('joints, edges and chambers', () => {
  it('divides the air: both chambers and the divider make up the gross', () => {
    const { box } = boxResult({
      divider: { parallelTo: 'left', clear: length(150), drivers: 'baffle', magnets: 'far' },
    });
    const [near, far] = box.chambers ?? [];
    // 150 x 344 x 284 mm of clear air before the divider.
    expect(near?.airLitres).toBeCloseTo((150 * 344 * 284) / 1e6, 9);
    expect((near?.netLitres ?? 0) + (far?.netLitres ?? 0)).toBeCloseTo(box.volumes.netLitres, 9);
    expect(box.bodies.some(({ role }) => role === 'divider')).toBe(true);
  });

  it('sets the baffle back within the outside, and rounds edges after it', () => {
    const flush = boxResult().box;
    const { box } = boxResult({
      baffleSetBack: length(20),
      roundOver: { radius: length(9.5), edges: 'all' },
    });
    expect(box.sizes.carcass).toEqual(flush.sizes.carcass);
    expect(box.volumes.recessLitres).toBeCloseTo((20 * 344 * 564) / 1e6, 6);
    expect(box.volumes.roundedOffLitres).toBeGreaterThan(0);
  });

  it('joins corners as asked without changing the air', () => {
    const net = boxResult().box.volumes.netLitres;
    for (const corners of ['rabbet', 'mitre'] as const) {
      const { box } = boxResult({ joints: { corners, sides: 'butt' } });
      expect(box.volumes.netLitres).toBeCloseTo(net, 9);
      expect(box.panels.some(({ edges }) => edges.some(({ joint }) => joint === corners))).toBe(true);
    }
  });

  it('says which figure cannot be at its own field', () => {
    const divider = { parallelTo: 'left', clear: length(900), drivers: 'baffle', magnets: 'far' } as const;
    expect(boxOutcome({ divider })).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'divider.clear' }],
    });
    const open = boxOutcome({ divider: { ...divider, clear: null } });
    expect(open).toMatchObject({ state: 'incomplete', missing: [{ field: 'divider.clear' }] });
    const round = { radius: length(40), edges: 'all' } as const;
    expect(boxOutcome({ roundOver: round })).toMatchObject({ refusals: [{ field: 'roundOver.radius' }] });
  });
});
