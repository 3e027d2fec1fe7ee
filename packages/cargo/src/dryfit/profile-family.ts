// Families of profiles with the lower back corner at the origin. In each of them a profile whose measures are all at
// least those of another contains it: so one that loads vouches for every smaller one, and one that doesn't rules out
// every larger one.
import type { ProfileFamily, ProfileMeasures } from '@gusset/contracts/dryfit';
import type { PolygonMm } from '@gusset/contracts/geometry';

export type FamilyShape = {
  /** Measures besides the depth at the floor, in the order in which they are searched. */
  readonly others: readonly ('t' | 'h' | 'm')[];
  profile(measures: ProfileMeasures): PolygonMm;
  areaMm2(measures: ProfileMeasures): number;
};

const corner = (xMm: number, yMm: number) => ({ xMm, yMm });

export const PROFILE_FAMILIES: Readonly<Record<ProfileFamily, FamilyShape>> = {
  box: {
    others: ['h'],
    profile: ({ b, h }) => [corner(0, 0), corner(b, 0), corner(b, h), corner(0, h)],
    areaMm2: ({ b, h }) => b * h,
  },
  wedge: {
    others: ['t', 'h'],
    profile: ({ b, t, h }) => [corner(0, 0), corner(b, 0), corner(t, h), corner(0, h)],
    areaMm2: ({ b, t, h }) => ((b + t) / 2) * h,
  },
  clipped: {
    others: ['t', 'h', 'm'],
    profile: ({ b, t, h, m }) =>
      m >= h
        ? [corner(0, 0), corner(b, 0), corner(b, h), corner(0, h)]
        : [corner(0, 0), corner(b, 0), corner(b, m), corner(t, h), corner(0, h)],
    areaMm2: ({ b, t, h, m }) => b * Math.min(m, h) + ((b + t) / 2) * Math.max(h - m, 0),
  },
};
