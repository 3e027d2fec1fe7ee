import { describe, expect, it } from 'vitest';
import { FOUND } from './search-design.fixture.ts';
import {
  boxWords,
  designId,
  frontWords,
  leftOutWords,
  reachWords,
  winnerWords,
  wiringWords,
} from './search-words.ts';

const NOBODY = {
  limitsUnknown: 0,
  sheetsIncomplete: 0,
  tooDeep: 0,
  noneAvailable: 0,
  priceUnknown: 0,
  overBudget: 0,
  loadTooLow: 0,
};

describe('the words of a search', () => {
  it('name the winner by what was asked for', () => {
    expect(winnerWords('deep', FOUND)).toBe(
      '2 × Quince Q-12, vented box, 62.4 L at 31.5 Hz: holds down to 26.4 Hz',
    );
    expect(winnerWords('loud', FOUND)).toMatch(/: plays 118\.2 dB$/);
    expect(winnerWords('smooth', FOUND)).toMatch(/: rises and falls by 1\.3 dB$/);
  });
  it('say that what holds to the end of the search holds below it', () => {
    expect(reachWords(10)).toBe('below 10 Hz');
    expect(reachWords(10.04)).toBe('10.0 Hz');
  });
  it('give a trunk wall no litres', () => {
    expect(boxWords({ kind: 'infinite-baffle', netLitres: 0, tuningHz: null })).toBe('Trunk wall');
  });
  it('tell how it is wired as a person does it', () => {
    expect(wiringWords(FOUND)).toBe('coils in parallel, drivers in series, 4 Ω load');
    expect(wiringWords({ count: 1, seriesPerString: 1, coilWiring: 'single', loadOhm: 3.96 })).toBe(
      '3.96 Ω load',
    );
    expect(wiringWords({ count: 4, seriesPerString: 2, coilWiring: 'single', loadOhm: 4 })).toBe(
      'strings of 2 in series, 4 Ω load',
    );
  });
  it('count what was not tried, and are silent where all was', () => {
    expect(leftOutWords(NOBODY)).toBeNull();
    expect(leftOutWords({ ...NOBODY, tooDeep: 3, overBudget: 1 })).toBe(
      'Not tried: 3 too deep for the room behind the panel, 1 over the budget.',
    );
  });
  it('claim no cheapness before those who see no costs', () => {
    expect(frontWords({ front: [FOUND], frontCount: 1 })).toBe(
      'No design is lower, louder, smaller and cheaper at once than this one.',
    );
    expect(frontWords({ front: [{ ...FOUND, costMinor: null }], frontCount: 1_200 })).toBe(
      'No design is lower, louder and smaller at once than these 1,200, of which 1 are drawn.',
    );
  });
  it('tell a winner from the step that it came from', () => {
    expect(designId(FOUND)).not.toBe(designId({ ...FOUND, netLitres: 62.5 }));
  });
});
