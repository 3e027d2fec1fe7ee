// Families of the Box sheet: those of the door and the L. Monotone in every measure, as those are.
import type { ProfileMeasures, SheetFamily } from '@gusset/contracts/dryfit';
import { type FamilyShape, PROFILE_FAMILIES } from '../profile-family.ts';

type SheetShape = Omit<FamilyShape, 'others'> & {
  readonly varies: readonly (keyof ProfileMeasures)[];
  /** The longest face that can carry a driver, seen along the car, mm. */
  baffleMm(measures: ProfileMeasures): number;
  /** Depth of the section at a height above its floor, mm; 0 above its top. */
  depthAtMm(measures: ProfileMeasures, heightMm: number): number;
};

const corner = (xMm: number, yMm: number) => ({ xMm, yMm });

export const SHEET_FAMILIES: Readonly<Record<SheetFamily, SheetShape>> = {
  box: {
    ...PROFILE_FAMILIES.box,
    varies: ['b', 'h'],
    baffleMm: ({ h }) => h,
    depthAtMm: ({ b, h }, y) => (y > h ? 0 : b),
  },
  wedge: {
    ...PROFILE_FAMILIES.wedge,
    varies: ['b', 't', 'h'],
    baffleMm: ({ b, t, h }) => Math.hypot(b - t, h),
    depthAtMm: ({ b, t, h }, y) => (y > h ? 0 : b + ((t - b) * y) / h),
  },
  clipped: {
    ...PROFILE_FAMILIES.clipped,
    varies: ['b', 't', 'h', 'm'],
    baffleMm: ({ b, t, h, m }) => Math.max(m, Math.hypot(b - t, h - m)),
    depthAtMm: ({ b, t, h, m }, y) => {
      if (y > h) return 0;
      return y <= m || m >= h ? b : b + ((t - b) * (y - m)) / (h - m);
    },
  },
  stepped: {
    varies: ['b', 't', 'h', 'm'],
    profile: ({ b, t, h, m }) => [
      corner(0, 0),
      corner(b, 0),
      corner(b, m),
      corner(t, m),
      corner(t, h),
      corner(0, h),
    ],
    areaMm2: ({ b, t, h, m }) => b * m + t * (h - m),
    baffleMm: ({ h, m }) => Math.max(m, h - m),
    depthAtMm: ({ b, t, h, m }, y) => (y > h ? 0 : y <= m ? b : t),
  },
};

/** No two corners of a section nearer than this, mm: below it the family is its simpler neighbour. */
const LEAST_STEP_MM = 5;

/** Null where the measures are no section of the family. */
export function sheetMeasures(family: SheetFamily, { b, t, h, m }: ProfileMeasures): ProfileMeasures | null {
  if (family === 'box') return { b, t: b, h, m: h };
  if (t > b - (family === 'stepped' ? LEAST_STEP_MM : 0)) return null;
  if (family === 'wedge') return { b, t, h, m: 0 };
  return m < LEAST_STEP_MM || h - m < LEAST_STEP_MM ? null : { b, t, h, m };
}
