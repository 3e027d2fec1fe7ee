import { describe, expect, it } from 'vitest';
import { type Milestones, standingOf } from './job-standing.ts';

const nothing: Milestones = {
  surveyedAt: null,
  pricedAt: null,
  quotedAt: null,
  approvedAt: null,
  inBayAt: null,
  handedOverAt: null,
  declinedAt: null,
};
const day = (n: number) => new Date(Date.UTC(2026, 10, n));

describe('standingOf', () => {
  it('is an enquiry until something has happened', () => {
    expect(standingOf(nothing)).toBe('enquiry');
  });
  it('follows the latest milestone, whatever was left out before it', () => {
    expect(standingOf({ ...nothing, surveyedAt: day(1) })).toBe('surveyed');
    expect(standingOf({ ...nothing, pricedAt: day(1) })).toBe('priced');
    expect(standingOf({ ...nothing, surveyedAt: day(1), quotedAt: day(2) })).toBe('quoted');
    expect(standingOf({ ...nothing, quotedAt: day(2), approvedAt: day(3) })).toBe('approved');
    expect(standingOf({ ...nothing, approvedAt: day(3), inBayAt: day(4) })).toBe('in-bay');
    expect(standingOf({ ...nothing, inBayAt: day(4), handedOverAt: day(5) })).toBe('handed-over');
  });
  it('ends with a declined quote, and starts again with a later one', () => {
    expect(standingOf({ ...nothing, quotedAt: day(2), declinedAt: day(3) })).toBe('declined');
    expect(standingOf({ ...nothing, quotedAt: day(4), declinedAt: day(3) })).toBe('quoted');
    expect(standingOf({ ...nothing, quotedAt: day(2), declinedAt: day(3), approvedAt: day(5) })).toBe(
      'approved',
    );
  });
});
