// One reading against its dimension, and where a reading goes when a free section gets other stations or corners.
import type { Dimension } from '@gusset/contracts/cargo';
import type { FreeSection, Reading } from '@gusset/contracts/survey';
import { degreesFromRad, type Refusal, refuse } from '@gusset/units';

/** Same limits as the engine's door. */
const MAX_PLUS_MINUS_MM = 200;
const MAX_PLUS_MINUS_RAD = 0.5;

/** Null = can be. Fields as a reading spells them, ranges in the words of the dimension's unit. */
export function readingRefusal(dimension: Dimension, { value, plusMinus }: Reading): Refusal | null {
  const isLength = dimension.unit === 'length';
  const [low, high] = isLength ? [dimension.minMm, dimension.maxMm] : [dimension.minRad, dimension.maxRad];
  const words = (amount: number) =>
    isLength ? `${amount} mm` : `${Math.round(degreesFromRad(amount) * 10) / 10}°`;
  if (!(value >= low && value <= high)) {
    return refuse('value', {
      allowed: `${words(low)} to ${words(high)}`,
      got: value,
      why: `${dimension.letter}, ${dimension.label.toLowerCase()}, is out of its range`,
    });
  }
  const most = isLength ? MAX_PLUS_MINUS_MM : MAX_PLUS_MINUS_RAD;
  if (plusMinus >= 0 && plusMinus <= most) return null;
  return refuse('plusMinus', {
    allowed: `0 to ${words(most)}`,
    got: plusMinus,
    why: `the ± of ${dimension.letter} is out of its range`,
  });
}

/** Beside the offsets: the sill, and where the straightedge lies. */
const STATION_FORM_KEYS: ReadonlySet<string> = new Set(['sillHeight', 'lineAlong', 'lineUp', 'lineTilt']);
const STATION_KEY = /^(up|down)-(\d+)$/;

/**
 * The key of a reading after the outline's description changed; null = its place is gone. Corners keep their ids, so
 * only stations move: a reading stays with its distance from the back wall.
 */
export function keyAfter(before: FreeSection | null, after: FreeSection | null, key: string): string | null {
  if (before === null || after === null || before.by !== after.by) {
    return isOutlineKey(before, key) ? null : key;
  }
  if (before.by === 'points' && after.by === 'points') {
    const corner = before.corners.find(({ id }) => key === `${id}-x` || key === `${id}-y`);
    return corner === undefined || after.corners.some(({ id }) => id === corner.id) ? key : null;
  }
  if (before.by !== 'stations' || after.by !== 'stations') return key;
  const found = STATION_KEY.exec(key);
  if (found === null) return key;
  const atMm = before.stations[Number(found[2])]?.mm;
  const index = after.stations.findIndex(({ mm }) => mm === atMm);
  return index === -1 ? null : `${found[1]}-${index}`;
}

function isOutlineKey(free: FreeSection | null, key: string): boolean {
  if (free === null) return false;
  if (free.by === 'stations') return STATION_FORM_KEYS.has(key) || STATION_KEY.test(key);
  return free.corners.some(({ id }) => key === `${id}-x` || key === `${id}-y`);
}
