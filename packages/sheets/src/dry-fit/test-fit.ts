// Whether a mock-up of the box's side profile was tried in the car: of this profile, not of an earlier one.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { TestFit } from '@gusset/contracts/cutting-sheet';
import { canonicalJson } from '../canonical-json.ts';

/** Profiles that differ by less are the same piece of cardboard, per mm. */
const PER_MM = 10;

export type TestFitStanding =
  /** Nobody has tried it. */
  | 'not-tried'
  /** Another profile was tried. */
  | 'profile-changed'
  /** It did not go in, or not out again. */
  | 'failed'
  | 'passed';

/** Eight figures that name a finished profile and its width: two profiles have the same about once in 4,000 million. */
export function profileMark({ box }: Pick<BoxSheetResult, 'box'>): string {
  const rounded = (mm: number) => Math.round(mm * PER_MM);
  const text = canonicalJson({
    profile: box.section.finished.map(({ xMm, yMm }) => [rounded(xMm), rounded(yMm)]),
    width: rounded(box.sizes.finished.widthMm),
  });
  // FNV-1a, 32 bits.
  let hash = 0x811c9dc5;
  for (const sign of text) hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

export function testFitStanding(testFit: TestFit | null, box: Pick<BoxSheetResult, 'box'>): TestFitStanding {
  if (testFit === null) return 'not-tried';
  if (testFit.profile !== profileMark(box)) return 'profile-changed';
  return testFit.wentIn && testFit.cameOut ? 'passed' : 'failed';
}

/** For paper: what the list is marked with until a mock-up has been in and out; nothing once it has. */
export function testFitWarnings(testFit: TestFit | null, box: Pick<BoxSheetResult, 'box'>): string[] {
  switch (testFitStanding(testFit, box)) {
    case 'not-tried':
      return ['NOT TEST-FITTED: try a mock-up of the side profile in and out of the car before cutting.'];
    case 'profile-changed':
      return [
        'NOT TEST-FITTED: the profile has changed since a mock-up was tried. Try it again before cutting.',
      ];
    case 'failed':
      return ['NOT TEST-FITTED: the mock-up did not go in and out. Do not cut from this list.'];
    case 'passed':
      return [];
  }
}
