import { describe, expect, it } from 'vitest';
import { comesFromOwnPage, ownOrigins } from './own-origin.ts';

const PUBLIC = 'https://gusset.example';
const phone = { 'x-forwarded-host': '192.0.2.7:4300', 'x-forwarded-proto': 'https', host: '127.0.0.1:4310' };

describe('ownOrigins', () => {
  it('are the address that people are told and the one that the front door was asked by', () => {
    expect(ownOrigins(phone, PUBLIC, true)).toEqual([PUBLIC, 'https://192.0.2.7:4300']);
  });
  it('take nobody’s word about the host where no front door stands before', () => {
    expect(ownOrigins(phone, PUBLIC, false)).toEqual([PUBLIC, 'http://127.0.0.1:4310']);
  });
  it('leave nonsense out', () => {
    expect(ownOrigins({ ...phone, 'x-forwarded-host': 'a b' }, PUBLIC, true)).toEqual([PUBLIC]);
    expect(ownOrigins({ ...phone, 'x-forwarded-proto': 'javascript' }, PUBLIC, true)).toEqual([PUBLIC]);
  });
});

describe('comesFromOwnPage', () => {
  it('refuses another page, whatever it says of the site', () => {
    expect(
      comesFromOwnPage({ origin: 'https://elsewhere.example', 'sec-fetch-site': 'same-origin' }, [PUBLIC]),
    ).toBe(false);
    expect(comesFromOwnPage({ 'sec-fetch-site': 'cross-site' }, [PUBLIC])).toBe(false);
  });
  it('takes its own pages and tools without a browser', () => {
    expect(comesFromOwnPage({ origin: PUBLIC }, [PUBLIC])).toBe(true);
    expect(comesFromOwnPage({}, [PUBLIC])).toBe(true);
  });
});
