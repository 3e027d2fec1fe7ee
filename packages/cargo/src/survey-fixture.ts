// Readings for tests: a section that can be worked by hand, every ± stated.
import type { AngleMeasurement, LengthMeasurement, Measurement } from '@gusset/contracts/cargo';
import { isRefusal, type Refusal } from '@gusset/units';

const TAKEN = {
  typed: '',
  method: 'tape',
  takenBy: 'M. Ilves',
  takenAt: '2026-11-24T09:30:00Z',
} as const;

export function lengthReading(
  key: string,
  valueMm: number,
  plusMinusMm: number | null = 0,
): LengthMeasurement {
  return { ...TAKEN, key, valueMm, plusMinusMm };
}

export function angleReading(
  key: string,
  valueRad: number,
  plusMinusRad: number | null = 0,
): AngleMeasurement {
  return { ...TAKEN, key, valueRad, plusMinusRad };
}

/** The lean of a 3-4-5 triangle: 3 along for 4 up. */
export const THREE_FOUR_RAD = Math.atan2(3, 4);

/** Exact zeros for what would otherwise be assumed with a ±. */
const LEVEL_AND_PLUMB = [
  lengthReading('floorRise', 0),
  lengthReading('sillLean', 0),
  lengthReading('lidFrame', 0),
];

/** Readings with some of them replaced. */
export function changed(readings: readonly Measurement[], ...others: readonly Measurement[]): Measurement[] {
  const keys = new Set(others.map(({ key }) => key));
  return [...readings.filter(({ key }) => !keys.has(key)), ...others];
}

/** Halden hatch on paper: a rectangle 800 deep and 500 high, open at its whole rear, 1000 wide, way in 950. */
export const RECTANGLE: readonly Measurement[] = [
  ...LEVEL_AND_PLUMB,
  lengthReading('floorDepth', 800),
  lengthReading('seatHeight', 500),
  lengthReading('opening', 500),
  lengthReading('roofDepth', 800),
  lengthReading('sillHeight', 0),
  angleReading('seatLean', 0),
  lengthReading('openingWidth', 950),
  lengthReading('archWidth', 1000),
];

/**
 * Merle estate on paper: floor 800, sill 120, seat leaning 3 in 4 to 520 up, opening 500 from the lip (800, 120) to
 * the seal, which stands 300 nearer the seat and so 400 higher: (500, 520).
 */
export const SLANTED: readonly Measurement[] = [
  ...LEVEL_AND_PLUMB,
  lengthReading('floorDepth', 800),
  lengthReading('seatHeight', 520),
  lengthReading('opening', 500),
  lengthReading('roofDepth', 110),
  lengthReading('sillHeight', 120),
  angleReading('seatLean', THREE_FOUR_RAD),
  lengthReading('openingWidth', 950),
  lengthReading('archWidth', 1000),
  lengthReading('upperWidth', 1300),
  lengthReading('archHeight', 300),
  lengthReading('archFrom', 100),
  lengthReading('archTo', 600),
];

/** A box upright on its back bottom corner, mm. */
export function uprightProfile(depthMm: number, heightMm: number) {
  return [
    { xMm: 0, yMm: 0 },
    { xMm: depthMm, yMm: 0 },
    { xMm: depthMm, yMm: heightMm },
    { xMm: 0, yMm: heightMm },
  ];
}

/** The answer, or a failed test that says why it was refused. */
export function answered<T>(answer: T | Refusal | null): T {
  if (isRefusal(answer)) throw new Error(`refused: ${JSON.stringify(answer.refusal)}`);
  if (answer === null) throw new Error('no answer');
  return answer;
}

/** Room under the rear seat of a Tern pickup, flat floor. */
export const UNDER_SEAT_READINGS: readonly Measurement[] = [
  lengthReading('floorDepth', 460),
  lengthReading('backHeight', 260),
  lengthReading('frontHeight', 220, 4.5),
  lengthReading('lipHeight', 0),
  lengthReading('width', 1280),
  lengthReading('openingWidth', 1200),
];
