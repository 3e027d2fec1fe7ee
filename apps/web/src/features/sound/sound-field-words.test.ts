import { describe, expect, it } from 'vitest';
import { openFields, pageOfField } from './sound-field-words.ts';

describe('pageOfField', () => {
  it.each([
    ['port.diameter', 'port'],
    ['rearPort.tuning', 'port'],
    ['equaliser.2.q', 'signal'],
    ['front.net', 'box'],
    ['target.lowHz', 'car'],
    ['driverId', 'driver'],
  ])('asks %s on the page %s', (field, page) => {
    expect(pageOfField(field)).toBe(page);
  });
});

describe('openFields', () => {
  it('counts what is missing by page', () => {
    const counts = openFields({
      state: 'incomplete',
      missing: [
        { field: 'port.diameter', what: '' },
        { field: 'port.tuning', what: '' },
        { field: 'drive', what: '' },
      ],
    });
    expect([...counts]).toEqual([
      ['port', 2],
      ['signal', 1],
    ]);
  });
  it('is empty for a sheet that is ready', () => {
    expect(openFields({ state: 'ready', result: null }).size).toBe(0);
  });
});
