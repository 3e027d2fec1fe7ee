import { describe, expect, it } from 'vitest';
import {
  askewWords,
  bevelWords,
  circleWords,
  guideWords,
  holesPlace,
  settingsWords,
  stepWords,
} from './machine-words.ts';

const length = (mm: number) => String(Math.round(mm * 10) / 10);

describe('words for the machines', () => {
  it('says how good the order of settings is', () => {
    expect(settingsWords({ setUps: [], fenceSettings: 3, settingsMapByMap: 7, leastSettings: 3 })).toBe(
      '3 fence settings, 7 when sheet after sheet is cut up; no order takes fewer',
    );
    expect(settingsWords({ setUps: [], fenceSettings: 1, settingsMapByMap: 1, leastSettings: 1 })).toBe(
      '1 fence setting; no order takes fewer',
    );
    expect(settingsWords({ setUps: [], fenceSettings: 5, settingsMapByMap: 5, leastSettings: 4 })).toBe(
      '5 fence settings; 4 at the least',
    );
  });

  it('names the edge on the fence only where it is the far one', () => {
    const step = {
      order: 1,
      sheet: { stockId: 'a', copy: 1 },
      along: 'width',
      piece: { xMm: 0, yMm: 0, lengthMm: 2428, widthMm: 606 },
      fenceMm: 800,
      kerf: { xMm: 800, yMm: 0, lengthMm: 3, widthMm: 606 },
      freesPartIds: [],
    } as const;
    expect(stepWords({ ...step, against: 'low', freesPartIds: [] }, 2, length)).toBe(
      'Sheet 2, across: from 2428 × 606',
    );
    expect(stepWords({ ...step, against: 'high', freesPartIds: [] }, 2, length)).toContain(
      'far edge on the fence',
    );
  });

  it('tells the way round a bevel that the blade does not reach', () => {
    expect(bevelWords({ how: 'flat', bevelDeg: 20, tiltDeg: 20, fenceMm: 1, cuts: [] })).toBe(
      'Blade at 20.0°, wider face down',
    );
    expect(bevelWords({ how: 'on-edge', bevelDeg: 60, tiltDeg: 30, fenceMm: 1, cuts: [] })).toContain(
      'blade at 30.0°',
    );
    expect(bevelWords({ how: 'other-way', bevelDeg: 50, tiltDeg: null, fenceMm: 1, cuts: [] })).toContain(
      'another machine',
    );
  });

  it('gives the straightedge its own line where it is not the cut', () => {
    const cut = {
      panelId: 'a',
      mark: 'A',
      pieces: 1,
      edge: 2,
      lengthMm: 100,
      angleDeg: 135,
      bevelDeg: 0,
      from: { xMm: 400, yMm: 300 },
      to: { xMm: 300, yMm: 400 },
      guideFrom: { xMm: 400, yMm: 300 },
      guideTo: { xMm: 300, yMm: 400 },
      stopsAtStart: true,
      stopsAtEnd: false,
    };
    expect(guideWords(cut, length)).toBeNull();
    expect(guideWords({ ...cut, guideFrom: { xMm: 350, yMm: 250 } }, length)).toBe(
      'straightedge from 350 / 250 to 300 / 400',
    );
    expect(askewWords(cut, length)).toContain('hollow corner');
  });

  it('names pivot and template of a circle, and the ring of its bolts', () => {
    const circle = {
      purpose: 'recess of driver 1',
      diameterMm: 320,
      depthMm: 9,
      passes: 2,
      pivotMm: 153.65,
      templateDiaMm: null,
    };
    expect(circleWords(circle, length)).toBe('Ø 320 recess, driver 1, 9 deep in 2 passes: pivot 153.7');
    const holes = {
      panelId: 'a',
      mark: 'A',
      pieces: 1,
      purpose: 'bolts of driver 1',
      diameterMm: 6.5,
      depthMm: null,
      ring: { xMm: 400, yMm: 200, diameterMm: 300 },
      centres: [{ xMm: 550, yMm: 200 }],
    };
    expect(holesPlace(holes, length)).toBe('on Ø 300 about 400 / 200, the first at 550 / 200');
    expect(holesPlace({ ...holes, ring: null }, length)).toBe('550 / 200');
  });
});
