import { HATCH_ESTATE } from '@gusset/cargo';
import {
  NO_EXTRAS,
  type Reading,
  type SurveyExtras,
  type SurveySnapshot,
  surveyExtrasSchema,
  surveyInputSchema,
  type TakenReading,
} from '@gusset/contracts/survey';
import { describe, expect, it } from 'vitest';
import { changedFigures } from '../sheet-definition.ts';
import { nextToTake, surveyForm, worthTaking } from './survey-form.ts';
import { surveySheet } from './survey-sheet.ts';

const SURVEY_ID = '00000000-0000-7000-8000-000000000021';
const at = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });

function reading(key: string, value: number, plusMinus = 0): TakenReading {
  const takenAt = '2026-11-24T09:30:00.000Z';
  return { key, value, plusMinus, typed: String(value), method: 'tape', takenBy: 'Tomas Reuter', takenAt };
}

/** A rectangle on paper: 800 deep, 500 high, open at its whole rear, 1000 wide, way in 950. */
const RECTANGLE: readonly TakenReading[] = [
  reading('floorDepth', 800),
  reading('seatHeight', 500),
  reading('opening', 500),
  reading('roofDepth', 800),
  reading('sillHeight', 0),
  reading('seatLean', 0),
  reading('openingWidth', 950),
  reading('archWidth', 1000),
];

function snapshot(changes: Partial<SurveySnapshot> = {}): SurveySnapshot {
  return {
    surveyId: SURVEY_ID,
    revision: 1,
    modelName: 'Halden Brisk, 2021 to 2024',
    formKind: 'hatch-estate',
    spaceName: '',
    seatState: 'seats up',
    takenBy: 'Tomas Reuter',
    takenOn: '2026-11-24',
    readings: RECTANGLE,
    extras: NO_EXTRAS,
    ...changes,
  };
}

const input = { surveyId: SURVEY_ID, stateId: null, notes: '' };

function resultOf(survey: SurveySnapshot, stateId: string | null = null) {
  const outcome = surveySheet.compute({ ...input, stateId }, { survey, newer: null }, null);
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const corners = [
  { x: at(0), y: at(0) },
  { x: at(200), y: at(0) },
  { x: at(200), y: at(100) },
  { x: at(0), y: at(100) },
];
const extras: SurveyExtras = {
  ...NO_EXTRAS,
  obstructions: [
    {
      id: 'jack',
      name: 'Jack',
      corners,
      left: at(-500),
      right: at(-300),
      plusMinusMm: 3,
      appliesTo: 'both',
      moves: false,
    },
  ],
  narrowings: [{ id: 'trim', name: 'Side pocket', corners, width: at(860), plusMinusMm: 4 }],
  states: [
    {
      id: 'folded',
      name: 'seat folded',
      replaced: [reading('floorDepth', 1500), reading('roofDepth', 1500)],
      absent: ['jack'],
    },
  ],
};

describe('surveySheet', () => {
  it('builds the cavity of the pinned survey', () => {
    const { cavity, revision, seatState } = resultOf(snapshot());
    expect(cavity.opening).toMatchObject({ heightMm: 500, widthMm: 950 });
    expect({ revision, seatState }).toEqual({ revision: 1, seatState: 'seats up' });
  });

  describe('a customer’s own car', () => {
    const car = (deltas: readonly Reading[]) => {
      const outcome = surveySheet.compute({ ...input, deltas }, { survey: snapshot(), newer: null }, null);
      if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
      return outcome.result;
    };
    const lower = { key: 'seatHeight', value: 488, plusMinus: 0, typed: '488', method: 'tape' } as const;

    it('carries what reads otherwise in place of the model’s readings', () => {
      const result = car([lower]);
      expect(result.deltas).toEqual([{ key: 'seatHeight', model: 500, car: 488 }]);
      expect(result.readings.filter(({ key }) => key === 'seatHeight')).toMatchObject([{ value: 488 }]);
      expect(Math.max(...result.cavity.polygon.map(({ yMm }) => yMm))).toBe(500);
      expect(result.cavity.polygon).toContainEqual({ xMm: 0, yMm: 488 });
      expect(
        changedFigures(
          '02 Survey',
          surveySheet.keyFigures(resultOf(snapshot())),
          surveySheet.keyFigures(result),
        ),
      ).toMatchObject([
        { label: 'B · Height at the seat back', before: '500 ±0 mm', after: '488 ±0 mm' },
        { label: 'This car · B · Height at the seat back', after: '488 mm, model 500 mm' },
      ]);
    });

    it('differs nowhere where its readings are the model’s', () => {
      expect(car([{ ...lower, value: 500 }]).deltas).toBeUndefined();
    });

    it('may have what nobody took on the model', () => {
      const upper = { ...lower, key: 'upperWidth', value: 1200 };
      expect(car([upper]).deltas).toEqual([{ key: 'upperWidth', model: null, car: 1200 }]);
    });

    it('gives way to a state of seat and floor', () => {
      const outcome = surveySheet.compute(
        { ...input, stateId: 'folded', deltas: [{ ...lower, key: 'floorDepth', value: 790 }] },
        { survey: snapshot({ extras }), newer: null },
        null,
      );
      expect(outcome).toMatchObject({ state: 'ready' });
      if (outcome.state !== 'ready') return;
      expect(Math.max(...outcome.result.cavity.polygon.map(({ xMm }) => xMm))).toBe(1500);
    });
  });

  it('stands its walls on reconciled values where the shop says so', () => {
    // Height under the seal 490 ±2 against an opening of 500 ±4 from the floor: 1/16 and 1/4 weigh to 492.
    const readings = [
      ...RECTANGLE.filter(({ key }) => key !== 'opening'),
      reading('opening', 500, 4),
      reading('sealHeight', 490, 2),
      ...['floorRise', 'sillLean', 'lidFrame'].map((key) => reading(key, 0)),
    ];
    const facts = { survey: snapshot({ readings }), newer: null };
    const heightOf = (reconciles: boolean | undefined) => {
      const outcome = surveySheet.compute(
        { ...input, ...(reconciles === undefined ? {} : { reconciles }) },
        facts,
        null,
      );
      return outcome.state === 'ready' ? outcome.result.cavity.opening.heightMm : null;
    };
    expect(heightOf(undefined)).toBe(500);
    expect(heightOf(false)).toBe(500);
    expect(heightOf(true)).toBeCloseTo(492, 2);
  });

  it('keeps drafts and surveys from before a part could swing or a car differ', () => {
    expect(surveyInputSchema.parse(input)).toEqual(input);
    const kept = { ...extras, states: [] };
    expect(surveyExtrasSchema.parse(kept)).toEqual(kept);
  });

  it('has a swinging part in the way wherever it comes, and a folded back only when folded', () => {
    const [jack] = extras.obstructions;
    if (jack === undefined) throw new Error('no jack');
    const moving: SurveyExtras = {
      ...extras,
      obstructions: [
        {
          ...jack,
          id: 'arm',
          name: 'Hinge arm',
          swing: { pivot: { x: at(0), y: at(0) }, fromDegrees: 0, toDegrees: 90 },
        },
        { ...jack, id: 'back', name: 'Folded back', offAsMeasured: true },
      ],
      states: [{ id: 'folded', name: 'seat folded', replaced: [], absent: ['arm'], present: ['back'] }],
    };
    expect(surveyExtrasSchema.safeParse(moving).error).toBeUndefined();
    const space = snapshot({ extras: moving });
    const [arm, ...others] = resultOf(space).cavity.obstructions;
    expect(others).toEqual([]);
    expect(Math.max(...(arm?.polygon ?? []).map(({ yMm }) => yMm))).toBeGreaterThan(200);
    expect(resultOf(space, 'folded').cavity.obstructions.map(({ id }) => id)).toEqual(['back']);
  });

  it('says the same of a part however the database orders its entries', () => {
    const [jack] = extras.obstructions;
    if (jack === undefined) throw new Error('no jack');
    const turnedRound = (part: object): object =>
      Object.fromEntries(
        Object.entries(part)
          .reverse()
          .map(([key, value]) => [
            key,
            typeof value === 'object' && value !== null && !Array.isArray(value) ? turnedRound(value) : value,
          ]),
      );
    const words = (obstructions: SurveyExtras['obstructions']) =>
      surveySheet.factFigures({ survey: snapshot({ extras: { ...NO_EXTRAS, obstructions } }), newer: null });
    expect(words([turnedRound(jack) as typeof jack])).toEqual(words([jack])); // same entries, other order
    expect(words([jack]).find(({ key }) => key === 'obstruction.jack')?.value).toContain('counts for both');
  });

  it('carries soft trim and what stands beyond the opening to the cavity', () => {
    const beyond = {
      lid: { length: at(700), thickness: at(60), openDegrees: 30, plusMinusMm: 20 },
      bumper: { out: at(120), below: at(200), plusMinusMm: 5 },
      ground: { below: at(650), plusMinusMm: 20 },
    };
    const softWalls = [{ id: 's1', wallId: 'seat-back', name: 'Seat back', crush: at(10) }];
    const { cavity } = resultOf(snapshot({ extras: { ...NO_EXTRAS, softWalls, beyond } }));
    expect(cavity.walls.find(({ id }) => id === 'seat-back')?.crushMm).toBe(10);
    expect(cavity.beyond).toEqual({
      lid: { lengthMm: 700, thicknessMm: 60, openRad: expect.closeTo(Math.PI / 6, 12), plusMinusMm: 20 },
      bumper: { outMm: 120, belowMm: 200, plusMinusMm: 5 },
      ground: { belowMm: 650, plusMinusMm: 20 },
    });
  });

  it('accepts its own empty draft and asks for a survey', () => {
    const empty = surveySheet.emptyInput();
    expect(surveyInputSchema.parse(empty)).toEqual(empty);
    expect(surveySheet.compute(empty, { survey: null, newer: null }, null)).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'surveyId' }],
    });
  });

  it('names every letter that is still missing', () => {
    const readings = RECTANGLE.filter(({ key }) => key !== 'opening' && key !== 'archWidth');
    const outcome = surveySheet.compute(input, { survey: snapshot({ readings }), newer: null }, null);
    if (outcome.state !== 'incomplete') throw new Error(outcome.state);
    expect(outcome.missing.map(({ field }) => field)).toEqual(['opening', 'archWidth']);
    expect(outcome.missing[0]?.what).toBe('C, opening, square to the way in');
  });

  it('passes on a refusal with the dimension that cannot be', () => {
    const readings = [...RECTANGLE.filter(({ key }) => key !== 'floorDepth'), reading('floorDepth', 9_999)];
    expect(surveySheet.compute(input, { survey: snapshot({ readings }), newer: null }, null)).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'measurements.floorDepth', got: 9_999 }],
    });
  });

  it('adds a narrower place with half its width and half its ± on either side', () => {
    const slab = resultOf(snapshot({ extras })).cavity.widthSlabs.find(({ id }) => id === 'trim');
    expect(slab).toMatchObject({ zMinMm: -430, zMaxMm: 430, sidePlusMinusMm: 2 });
  });

  it('swaps readings and takes away what is gone in a state', () => {
    const survey = snapshot({ extras });
    const folded = resultOf(survey, 'folded');
    expect(Math.max(...folded.cavity.polygon.map(({ xMm }) => xMm))).toBeCloseTo(1500, 6);
    expect(folded.cavity.obstructions).toEqual([]);
    expect(folded.seatState).toBe('seat folded');
    expect(resultOf(survey).cavity.obstructions).toHaveLength(1);
  });

  it('lists every lettered dimension and the opening by name', () => {
    const labels = surveySheet
      .keyFigures(resultOf(snapshot()))
      .map(({ label, value }) => `${label}: ${value}`);
    expect(labels).toContain('A · Floor, seat back to sill: 800 ±0 mm');
    expect(labels).toContain('Opening, width: 950 ±0 mm');
  });

  it('says what differs once a newer revision is settled', () => {
    const pinned = snapshot();
    const readings = RECTANGLE.map((each) =>
      each.key === 'seatHeight' ? reading('seatHeight', 492, 3) : each,
    );
    const newer = snapshot({ surveyId: '00000000-0000-7000-8000-000000000022', revision: 2, readings });
    const before = surveySheet.factFigures({ survey: pinned, newer: null });
    const after = surveySheet.factFigures({ survey: pinned, newer });
    expect(
      changedFigures('Records', before, after).map(
        (change) => `${change.label}: ${change.before} → ${change.after}`,
      ),
    ).toEqual(['Survey: revision 1 → revision 2', 'B · Height at the seat back: 500 ±0 mm → 492 ±3 mm']);
  });

  it('lists a moved obstruction as a difference', () => {
    const [jack] = extras.obstructions;
    if (jack === undefined) throw new Error('no jack');
    const moved = { ...extras, obstructions: [{ ...jack, right: at(-250) }] };
    const before = surveySheet.factFigures({ survey: snapshot({ extras }), newer: null });
    const after = surveySheet.factFigures({ survey: snapshot({ extras: moved }), newer: null });
    expect(changedFigures('Records', before, after).map(({ label }) => label)).toEqual(['In the way']);
  });
});

describe('the order of asking', () => {
  it('asks a hatch for seal depth, sill lean, floor rise and lid frame once the rest is there', () => {
    expect(worthTaking(HATCH_ESTATE, RECTANGLE).map(({ letter }) => letter)).toEqual(['G', 'H', 'J', 'K']);
  });

  it('goes to the next letter needed, round the form, before those worth taking', () => {
    const readings = RECTANGLE.filter(({ key }) => key !== 'seatHeight');
    expect(nextToTake(HATCH_ESTATE, readings, 'archWidth')).toBe('seatHeight');
    expect(nextToTake(HATCH_ESTATE, RECTANGLE, 'seatHeight')).toBe('sillLean');
    const all = [
      ...RECTANGLE,
      ...['sillLean', 'floorRise', 'sealDepth', 'lidFrame'].map((key) => reading(key, 0)),
    ];
    expect(nextToTake(HATCH_ESTATE, all, 'lidFrame')).toBeNull();
  });

  it('has no form for a free section that does not say how it is taken', () => {
    expect(surveyForm('free-section', null)).toMatchObject({ refusal: { field: 'free' } });
    expect(surveyForm('free-section', { by: 'stations', stations: [at(0), at(400)] })).toMatchObject({
      kind: 'free-section',
    });
  });
});
