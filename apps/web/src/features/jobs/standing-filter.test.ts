import { describe, expect, it } from 'vitest';
import { isLate } from './standing-filter.ts';

describe('isLate', () => {
  it('compares the plan with the promise', () => {
    expect(isLate({ promisedOn: '2026-11-25', forecastOn: '2026-11-26', standing: 'approved' })).toBe(true);
    expect(isLate({ promisedOn: '2026-11-26', forecastOn: '2026-11-26', standing: 'approved' })).toBe(false);
  });
  it('is never said of a job without a promise or one that is handed over', () => {
    expect(isLate({ promisedOn: null, forecastOn: '2026-11-26', standing: 'approved' })).toBe(false);
    expect(isLate({ promisedOn: '2026-11-25', forecastOn: '2026-11-26', standing: 'handed-over' })).toBe(
      false,
    );
  });
});
