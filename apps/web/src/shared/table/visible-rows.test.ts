import { describe, expect, it } from 'vitest';
import { compareSortValues, countWords, rowAfterKey, visibleRows } from './visible-rows.ts';

type Job = { readonly number: number; readonly vehicle: string; readonly late: boolean };

const JOBS: readonly Job[] = [
  { number: 2409, vehicle: 'Orrin van', late: true },
  { number: 2411, vehicle: 'Tern coupé', late: false },
  { number: 2414, vehicle: 'Merle estate', late: false },
];
const LATE = { id: 'late', label: 'Late', test: (job: Job) => job.late };
const choose = (searchText: string, chips: readonly (typeof LATE)[] = []) =>
  visibleRows({ rows: JOBS, searchText, chips, wordsOf: (job) => `${job.number} ${job.vehicle}` }).map(
    (job) => job.number,
  );

describe('visibleRows', () => {
  it('shows everything when nothing is asked', () => {
    expect(choose('  ')).toEqual([2409, 2411, 2414]);
  });

  it('finds by part of a number or a word, accents folded', () => {
    expect(choose('241')).toEqual([2411, 2414]);
    expect(choose('coupe')).toEqual([2411]);
  });

  it('wants every word typed', () => {
    expect(choose('tern 2411')).toEqual([2411]);
    expect(choose('tern 2409')).toEqual([]);
  });

  it('wants every chip that is on', () => {
    expect(choose('', [LATE])).toEqual([2409]);
    expect(choose('merle', [LATE])).toEqual([]);
  });
});

describe('compareSortValues', () => {
  it('sorts numbers by size and texts as people count: 9 before 10', () => {
    expect(compareSortValues(9, 10)).toBeLessThan(0);
    expect(compareSortValues('Bay 9', 'Bay 10')).toBeLessThan(0);
  });
});

describe('rowAfterKey', () => {
  it('moves by row and page and stays inside', () => {
    expect(rowAfterKey('ArrowDown', 0, 3)).toBe(1);
    expect(rowAfterKey('ArrowUp', 0, 3)).toBe(0);
    expect(rowAfterKey('PageDown', 5, 100)).toBe(15);
    expect(rowAfterKey('PageDown', 95, 100)).toBe(99);
    expect(rowAfterKey('End', 0, 100)).toBe(99);
    expect(rowAfterKey('Home', 57, 100)).toBe(0);
  });

  it('leaves other keys and empty lists alone', () => {
    expect(rowAfterKey('a', 0, 3)).toBeNull();
    expect(rowAfterKey('ArrowDown', 0, 0)).toBeNull();
  });
});

describe('countWords', () => {
  it('counts what is shown of what there is', () => {
    const noun = { one: 'job', many: 'jobs' };
    expect(countWords(3, 24, noun)).toBe('3 of 24 jobs');
    expect(countWords(1, 1, noun)).toBe('1 job');
  });
});
