import { describe, expect, it } from 'vitest';
import { BOX_INPUT, boxResult, length } from '../box/box-fixture.ts';
import { profileMark, testFitStanding, testFitWarnings } from './test-fit.ts';

const box = boxResult();
const tried = {
  profile: profileMark(box),
  wentIn: true,
  cameOut: true,
  by: 'Tomas Rehn',
  at: '2026-11-25T09:00:00.000Z',
};

describe('a test fit', () => {
  it('counts for the profile that was tried and no other', () => {
    const lower = boxResult({ outside: { ...BOX_INPUT.outside, height: length(379) } });
    expect(testFitStanding(tried, box)).toBe('passed');
    expect(testFitStanding(tried, lower)).toBe('profile-changed');
  });

  it('stays for a change that the profile does not show', () => {
    expect(profileMark(boxResult({ lining: 'walls' }))).toBe(profileMark(box));
  });

  it('marks the list until a mock-up has been in and out', () => {
    expect(testFitWarnings(null, box)).toEqual([expect.stringContaining('NOT TEST-FITTED')]);
    expect(testFitWarnings({ ...tried, cameOut: false }, box)).toEqual([
      expect.stringContaining('did not go in and out'),
    ]);
    expect(testFitWarnings(tried, box)).toEqual([]);
  });
});
