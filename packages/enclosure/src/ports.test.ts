// Ports worked by hand in the box of 700 × 380 × 420 mm, 18 mm board: inside 664 × 344 × 384 mm.
import type { BoxDesign, BoxResult, PlacedPort } from '@gusset/contracts/enclosure';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildBox } from './build-box.ts';
import { built, finding, panel, withDrivers } from './built-box.ts';
import { BARE_BOX, BARE_WEDGE, example } from './example-designs.ts';
import { flaredMm3, flareRadiusMm } from './tube-port.ts';

type PortInput = NonNullable<Parameters<typeof example>[0]['ports']>[number];

const ported = (port: PortInput, design: BoxDesign = BARE_BOX) => example({ ...design, ports: [port] });

function only(box: BoxResult): PlacedPort {
  const [port] = box.ports ?? [];
  if (port === undefined) throw new Error('no port');
  return port;
}

function refusal(design: BoxDesign) {
  const box = buildBox(design);
  if (!isRefusal(box)) throw new Error('this box was built');
  return box.refusal;
}

const floorSlot = { kind: 'slot', face: 'front', along: 'bottom', heightMm: 30 } as const;

describe('a slot along the floor, 30 mm high, 300 mm long', () => {
  const box = built(ported({ ...floorSlot, lengthMm: 300 }));

  it('has one panel, from the front’s inner face to 120 mm from the back', () => {
    // from x = 420 - 18 to 420 - 300
    expect(panel(box, 'port-1-panel-1')).toMatchObject({ lengthMm: 664, widthMm: 282, thicknessMm: 18 });
    expect(only(box)).toMatchObject({ lengthMm: 300, bends: 0, neededRoomMm: 30 });
    expect(only(box).endRoomMm).toBeCloseTo(120 - 18, 9);
  });

  it('leaves a baffle that ends at its upper side', () => {
    // from 18 + 30 to 380 - 18
    expect(panel(box, 'wall-front').widthMm).toBeCloseTo(314, 9);
    expect(panel(box, 'wall-bottom').widthMm).toBe(420);
  });

  it('takes channel and panel: 282 × 664 × (30 + 18) mm', () => {
    expect(only(box).displacedLitres).toBeCloseTo(8.987904, 9);
    expect(only(box).mouthLitres).toBeCloseTo(0.35856, 9); // 18 × 664 × 30
    expect(only(box).airLitres).toBeCloseTo((300 * 664 * 30) / 1e6, 9);
    expect(only(box).openAreaCm2).toBeCloseTo(199.2, 9);
    expect(box.volumes.deductions).toContainEqual({
      code: 'port',
      label: null,
      count: 1,
      litres: only(box).displacedLitres,
      source: 'computed',
    });
    expect(box.volumes.netLitres).toBeCloseTo(87.711744 - 8.987904, 9);
  });

  it('stops braces at its panel, so that none stands in it', () => {
    const braced = built(
      ported(
        { ...floorSlot, lengthMm: 300 },
        { ...BARE_BOX, bracing: { kind: 'count', count: 1, solidFraction: 1, offCentre: 'left' } },
      ),
    );
    // 384 × 344 less 282 × 48, 18 mm thick
    expect(panel(braced, 'brace-1').solidMm3).toBeCloseTo((384 * 344 - 282 * 48) * 18, 3);
    expect(finding(braced, 'port-meets-brace')).toBeUndefined();
  });
});

describe('a slot along the floor, 600 mm long', () => {
  const box = built(ported({ ...floorSlot, lengthMm: 600 }));

  it('turns up the back, measured along its middle', () => {
    // 420 - 18 - 15 = 387 mm to the corner of the middle line, 213 mm up from y = 33
    expect(only(box)).toMatchObject({ lengthMm: 600, bends: 1 });
    expect(only(box).centreLineMm.map(({ x, y }) => [x, y])).toEqual([
      [420, 33],
      [33, 33],
      [33, 246],
    ]);
    expect(panel(box, 'port-1-panel-1').widthMm).toBeCloseTo(402 - 48, 9);
    expect(panel(box, 'port-1-panel-2').widthMm).toBeCloseTo(246 - 66, 9);
  });

  it('takes both channels and both panels', () => {
    // (384 × 30 + 198 × 30 + (354 + 180) × 18) × 664
    expect(only(box).displacedLitres).toBeCloseTo(17.975808, 9);
  });
});

describe('slots that find no room', () => {
  it('are too long straight', () => {
    const box = built(ported({ ...floorSlot, lengthMm: 500, bendsAllowed: 0 }));
    // 402 mm to the back, 10 mm have to stay open
    const found = finding(box, 'port-too-long');
    expect(found).toMatchObject({ port: 1, lengthMm: 500 });
    expect(found?.roomMm).toBeCloseTo(392, 9);
    expect(found?.byMm).toBeCloseTo(108, 9);
  });

  it('come out at the nearest length that can be built', () => {
    // straight up to 392 mm; round the corner from 387 + 33 + 10 = 430 mm on
    const found = finding(built(ported({ ...floorSlot, lengthMm: 400 })), 'port-length-off');
    expect(found?.builtMm).toBeCloseTo(392, 9);
    expect(finding(built(ported({ ...floorSlot, lengthMm: 430 })), 'port-length-off')).toBeUndefined();
  });

  it('end too near to the back', () => {
    const box = built(ported({ ...floorSlot, lengthMm: 380, bendsAllowed: 0 }));
    const found = finding(box, 'port-end-close');
    expect(found?.roomMm).toBeCloseTo(22, 9);
    expect(found?.byMm).toBeCloseTo(8, 9);
  });

  it('are refused where they are shorter than the wood', () => {
    expect(refusal(ported({ ...floorSlot, lengthMm: 20 }))).toMatchObject({
      field: 'ports[0].lengthMm',
      got: 20,
      why: 'the port is 8 mm shorter than that',
    });
  });

  it('are refused along a wall that is not beside their face', () => {
    expect(refusal(ported({ ...floorSlot, along: 'back', lengthMm: 200 }))).toMatchObject({
      field: 'ports[0].along',
      allowed: 'top, bottom, left, right',
    });
  });

  it('are refused twice at one corner', () => {
    const slot = { ...floorSlot, lengthMm: 200 };
    expect(refusal(example({ ...BARE_BOX, ports: [slot, slot] })).field).toBe('ports[1].along');
  });
});

describe('a slot narrower than the box', () => {
  const narrow = { ...floorSlot, widthMm: 150, lengthMm: 250 } as const;

  it('has a cheek on both sides and a notch in the baffle', () => {
    const box = built(ported(narrow));
    expect(panel(box, 'port-1-panel-1').lengthMm).toBeCloseTo(150 + 2 * 18, 9);
    expect(panel(box, 'port-1-cheek-left')).toMatchObject({ lengthMm: 232, widthMm: 30 });
    const baffle = panel(box, 'wall-front');
    expect(baffle.outline).toHaveLength(8);
    expect(baffle.solidMm3).toBeCloseTo((664 * 344 - 150 * 30) * 18, 3);
    // 232 mm behind the front: 186 × 48, whatever of it is air
    expect(only(box).displacedLitres).toBeCloseTo((232 * 186 * 48) / 1e6, 9);
  });

  it('needs one cheek against a side', () => {
    const box = built(ported({ ...narrow, acrossMm: 332 - 75 }));
    expect(box.panels.filter(({ id }) => id.includes('cheek')).map(({ id }) => id)).toEqual([
      'port-1-cheek-right',
    ]);
    expect(panel(box, 'wall-front').outline).toHaveLength(6);
  });

  it('is refused where no cheek goes in beside it', () => {
    const { field, why } = refusal(ported({ ...narrow, acrossMm: 332 - 75 - 10 }));
    expect(field).toBe('ports[0].acrossMm');
    expect(why).toBe('beside the slot there are 10 mm, 8 mm too little');
  });

  it('says which brace stands in it, and by how much', () => {
    const bracing = { kind: 'placed' as const, zMm: [40], solidFraction: 0.45 };
    const found = finding(built(ported(narrow, { ...BARE_BOX, bracing })), 'port-meets-brace');
    // the slot and its cheeks go to ±93 mm, the brace from 31 mm on
    expect(found).toMatchObject({ port: 1, panelId: 'brace-1' });
    expect(found?.byMm).toBeCloseTo(62, 9);
  });

  it('is left free by braces that may stand anywhere', () => {
    const bracing = { kind: 'count' as const, count: 2, solidFraction: 0.45, offCentre: 'left' as const };
    expect(finding(built(ported(narrow, { ...BARE_BOX, bracing })), 'port-meets-brace')).toBeUndefined();
  });
});

describe('a slot along a side, 40 mm wide, 250 mm long', () => {
  const box = built(ported({ kind: 'slot', face: 'front', along: 'left', heightMm: 40, lengthMm: 250 }));

  it('stands an upright panel beside the side and narrows the baffle', () => {
    expect(panel(box, 'port-1-panel-1')).toMatchObject({ lengthMm: 232, widthMm: 344 });
    expect(panel(box, 'wall-front').lengthMm).toBeCloseTo(624, 9);
    expect(only(box).displacedLitres).toBeCloseTo((232 * 344 * 58) / 1e6, 9);
    expect(only(box).openAreaCm2).toBeCloseTo(4 * 34.4, 9);
  });
});

describe('pipes', () => {
  const pipe = { kind: 'tube', face: 'front', insideDiaMm: 100, wallMm: 4, lengthMm: 200 } as const;

  it('take their outside behind the wood', () => {
    const box = built(ported(pipe));
    expect(only(box).displacedLitres).toBeCloseTo((Math.PI * 54 ** 2 * 182) / 1e6, 9);
    expect(only(box).endRoomMm).toBeCloseTo(402 - 200, 9);
    expect(panel(box, 'wall-front').holes).toMatchObject([{ purpose: 'port 1', diameterMm: 108 }]);
  });

  it('take more by their flares, to the closed form of the quarter circle', () => {
    const [plain, flare] = [54, 20];
    const steps = 20_000;
    const slices = Array.from({ length: steps }, (_, step) => {
      const backMm = ((step + 0.5) * flare) / steps;
      return (Math.PI * flareRadiusMm(plain, flare, backMm) ** 2 * flare) / steps;
    });
    const sum = slices.reduce((total, slice) => total + slice, 0);
    expect(Math.abs(flaredMm3(plain, flare, 0, flare) - sum) / sum).toBeLessThan(1e-6);
    const halves = flaredMm3(plain, flare, 0, 7) + flaredMm3(plain, flare, 7, 30);
    expect(flaredMm3(plain, flare, 0, 30)).toBeCloseTo(halves, 6);
  });

  it('go where the baffle has room beside its driver', () => {
    const box = built(ported(pipe, withDrivers(BARE_BOX, {})));
    expect(finding(box, 'openings-meet')).toBeUndefined();
    expect(finding(box, 'port-meets-driver')).toBeUndefined();
  });

  it('say that they stand in a driver', () => {
    const box = built(ported({ ...pipe, at: [{ acrossMm: 120, upMm: 190 }] }, withDrivers(BARE_BOX, {})));
    // axes 120 mm apart; radii 54 mm and, 18 mm behind the seat, 116 - 41 × 18 / 128 mm
    const found = finding(box, 'port-meets-driver');
    expect(found?.byMm).toBeCloseTo(54 + 116 - (41 * 18) / 128 - 120, 1);
  });

  it('are too long for a wedge at its lid, not at its floor', () => {
    const at = (upMm: number) =>
      built(ported({ ...pipe, face: 'back', lengthMm: 300, at: [{ acrossMm: 0, upMm }] }, BARE_WEDGE));
    expect(finding(at(300), 'port-too-long')?.byMm).toBeGreaterThan(0);
    expect(finding(at(90), 'port-too-long')).toBeUndefined();
  });
});
