import { driverSearchInputSchema } from '@gusset/contracts/acoustics';
import { describe, expect, it } from 'vitest';
import { askedBy, problemsOf, type SearchDefaults, type SearchEntry, startEntry } from './search-entry.ts';

const DEFAULTS: SearchDefaults = {
  netLitres: 40,
  watts: 500,
  loadOhm: 2.3,
  cabin: { kind: 'shelf', longestM: 2.6, upperQ: 0.7, lowerHz: 23, lowerQ: 0.7 },
  losses: { fillFactor: 1, ql: 15, qa: null },
  radiators: [],
};

function problems(change: Partial<SearchEntry>) {
  const asked = askedBy({ ...startEntry(DEFAULTS), ...change }, DEFAULTS);
  return 'problems' in asked ? asked.problems : null;
}

describe('startEntry', () => {
  it('starts from what the sheet knows: its volume, and its power at the nearest load', () => {
    const entry = startEntry(DEFAULTS);
    expect([entry.leastNet?.litres, entry.mostNet?.litres]).toEqual([24, 60]);
    expect([entry.watts[4], entry.watts[2]?.value, entry.watts[1]]).toEqual([null, 500, null]);
  });
  it('leaves open what the sheet does not know', () => {
    const entry = startEntry({ ...DEFAULTS, netLitres: null, watts: null, loadOhm: null });
    expect([entry.leastNet, entry.mostNet, entry.watts[4]]).toEqual([null, null, null]);
  });
});

describe('askedBy', () => {
  it('makes a question that the contract takes', () => {
    const asked = askedBy(startEntry(DEFAULTS), DEFAULTS);
    expect(driverSearchInputSchema.safeParse(asked).success).toBe(true);
    expect(asked).toMatchObject({ brief: { power: [{ loadOhm: 2, watts: 500 }], cabin: DEFAULTS.cabin } });
  });
  it('says at each field what is open, all at once', () => {
    const nothing = { 4: null, 2: null, 1: null };
    expect(Object.keys(problems({ kinds: [], leastNet: null, mostNet: null, watts: nothing }) ?? {})).toEqual(
      ['kinds', 'leastNet', 'mostNet', 'watts'],
    );
  });
  it('wants the least volume first', () => {
    const { leastNet } = startEntry(DEFAULTS);
    expect(problems({ mostNet: { litres: 10, typed: '10', unit: 'L', note: null }, leastNet })?.mostNet).toBe(
      'At least 24 L, the least volume beside it.',
    );
  });
});

describe('problemsOf', () => {
  it('puts the server’s complaints at their fields, and what is no field here on the sheet', () => {
    expect(
      problemsOf([
        { path: 'brief.net.mostLitres', message: 'a' },
        { path: 'brief.power[0].watts', message: 'b' },
        { path: 'brief.cabin.lowerHz', message: 'c' },
      ]),
    ).toEqual({ mostNet: 'a', watts: 'b', sheet: 'c' });
  });
});
