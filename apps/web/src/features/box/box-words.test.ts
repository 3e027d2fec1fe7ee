import type { BoxPlace } from '@gusset/contracts/box';
import type { SurfaceClearance } from '@gusset/contracts/cargo';
import type { BoxFinding } from '@gusset/contracts/enclosure';
import { describe, expect, it } from 'vitest';
import {
  boxHeadline,
  deductionWords,
  draftHeadline,
  findingWords,
  liftHeadline,
  noteWords,
  openingHeadline,
} from './box-words.ts';

const length = (mm: number) => `${mm} mm`;

function clearance(changes: Partial<SurfaceClearance> = {}): SurfaceClearance {
  const point = { xMm: 0, yMm: 0, zMm: 0 };
  return {
    surface: { type: 'wall', id: 'seat-back', name: 'Seat back', role: 'seat-back', side: null },
    clearanceMm: 18,
    worstCaseMm: 12,
    likelyMm: 15,
    wantedMm: 12,
    verdict: 'clear',
    rests: false,
    at: [point, point],
    ...changes,
  };
}

function place(changes: Partial<BoxPlace['placement']> = {}): BoxPlace {
  return {
    pose: { xMm: 0, yMm: 0, thetaRad: 0, zMm: 0 },
    placement: {
      fits: true,
      fitsAtWorst: true,
      clearances: [clearance()],
      overlapping: [],
      outsideSection: false,
      ...changes,
    },
    opening: {
      verdict: 'passes',
      heightSpareMm: 100,
      widthSpareMm: 40,
      worstHeightSpareMm: 96,
      worstWidthSpareMm: 36,
      wantedSpareMm: 20,
      minCaliperWidthMm: 300,
      trials: [],
      sentenceCode: 'square-on-passes-turning-not-considered',
    },
  };
}

/** Only what the headlines read; a whole result stands in the tests of the sheet itself. */
type Read = Parameters<typeof boxHeadline>[0];
const result = (of: { place?: BoxPlace | null; findings?: BoxFinding[]; notes?: Read['notes'] }): Read => ({
  place: of.place ?? null,
  notes: of.notes ?? [],
  box: { findings: of.findings ?? [] },
});

describe('boxHeadline', () => {
  it('says first what cannot be built', () => {
    const finding: BoxFinding = {
      code: 'driver-meets-wall',
      part: 'magnet',
      driver: 1,
      face: 'back',
      edge: 'upper',
      byMm: 9,
      at: { xMm: 0, yMm: 0 },
    };
    expect(boxHeadline(result({ place: place(), findings: [finding] }), length)).toEqual({
      tone: 'fail',
      words: 'It cannot be built so',
      lines: ['The magnet of driver 1 meets the back by 9 mm.'],
    });
  });
  it('says by how much a box does not stand in its place', () => {
    const { surface } = clearance();
    const inWall = place({ fits: false, fitsAtWorst: false, overlapping: [{ surface, byMm: 7 }] });
    expect(boxHeadline(result({ place: inWall }), length)).toMatchObject({
      tone: 'fail',
      lines: ['7 mm too far at seat back.'],
    });
  });
  it('tells a box that fits from one that fits only as measured, and from a tight one', () => {
    expect(boxHeadline(result({ place: place() }), length).tone).toBe('pass');
    const unsure = boxHeadline(result({ place: place({ fitsAtWorst: false }) }), length);
    expect(unsure).toMatchObject({ tone: 'check', words: expect.stringContaining('every ±') });
    const tight = place({ clearances: [clearance({ verdict: 'tight', worstCaseMm: 8 })] });
    expect(boxHeadline(result({ place: tight }), length)).toMatchObject({
      tone: 'check',
      lines: ['Tightest at seat back: 18 mm, at worst 8 mm; wanted 12 mm.'],
    });
  });
  it('does not name the floor that the box stands on', () => {
    const floor = clearance({ rests: true, clearanceMm: 0, verdict: 'touches' });
    const both = place({ clearances: [floor, clearance()] });
    expect(boxHeadline(result({ place: both }), length)).toMatchObject({
      tone: 'pass',
      lines: ['Tightest at seat back: 18 mm, at worst 12 mm; wanted 12 mm.'],
    });
  });
  it('says that nothing is known of a car that nobody measured', () => {
    const headline = boxHeadline(result({ notes: [{ code: 'no-survey' }] }), length);
    expect(headline).toMatchObject({ tone: 'check', lines: [expect.stringContaining('No survey')] });
  });
});

describe('openingHeadline', () => {
  it('says with every verdict that turning was not looked at', () => {
    for (const verdict of ['passes', 'does-not-pass', 'too-close'] as const) {
      const { opening, ...rest } = place();
      const { lines } = openingHeadline({ ...rest, opening: { ...opening, verdict } }, length);
      expect(lines.join(' ')).toContain('turning it on the way in is not considered');
    }
  });
});

describe('liftHeadline', () => {
  const lift = (changes: Partial<Extract<BoxFinding, { code: 'two-person-lift' }>>): BoxFinding => ({
    code: 'two-person-lift',
    emptyKg: 18,
    withDriversKg: 31,
    limitKg: 20,
    emptyIsHeavy: false,
    hoist: false,
    ...changes,
  });
  it('offers to fit the drivers later where that helps', () => {
    expect(liftHeadline(result({ findings: [lift({})] }))).toMatchObject({
      words: '31.0 kg with its drivers: two people',
      lines: ['Or fit the drivers once the box is in: empty it is 18.0 kg.'],
    });
  });
  it('asks for a lift where two people would carry too much each', () => {
    const heavy = lift({ emptyKg: 45, withDriversKg: 60, emptyIsHeavy: true, hoist: true });
    expect(liftHeadline(result({ findings: [heavy] }))).toMatchObject({
      words: '60.0 kg with its drivers: use a lift',
      lines: ['The empty box alone is 45.0 kg.'],
    });
  });
  it('is nothing for a light box', () => {
    expect(liftHeadline(result({}))).toBeNull();
  });
});

describe('the other words', () => {
  it('count drivers and mark what is not stated', () => {
    const driver = { code: 'driver' as const, label: null, count: 2, litres: 0, source: 'missing' as const };
    expect(deductionWords(driver)).toBe('Driver × 2, not stated');
    expect(deductionWords({ ...driver, code: 'brace', count: 1, source: 'computed' })).toBe('Braces');
  });
  it('say where a net volume lies from its target', () => {
    const off: BoxFinding = { code: 'net-off-target', overLitres: -3.25, percent: -9.6 };
    expect(findingWords(off, length)).toBe('The net volume is 3.3 L below what sheet 03 wants (10 %).');
  });
  it('name the remedy for a wall that rings', () => {
    const low: BoxFinding = {
      code: 'panel-mode-low',
      panelId: 'top',
      mark: 'C',
      firstModeHz: 151,
      targetHz: 200,
      bracesNeeded: 1,
      thicknessNeededMm: 23.9,
    };
    expect(findingWords(low, length)).toBe(
      'Panel C rings at about 151 Hz, wanted above 200 Hz: one brace or a board of 24 mm.',
    );
  });
  it('say what a nominal thickness means', () => {
    const note = { code: 'thickness-nominal', stock: 'carcass', name: 'MDF 18' } as const;
    expect(noteWords(note, length)).toContain('Measure the real sheet');
  });
  it('name the drafts it is drawn from', () => {
    expect(draftHeadline(['survey', 'sound']).words).toBe('Drawn from a draft of 02 Survey and 03 Sound');
    expect(draftHeadline(['survey']).lines).toEqual([]);
  });
});
