import { describe, expect, it } from 'vitest';
import { connectionCode, createApiOrigins, mayAskAnother } from './api-origins.ts';

const ONE = 'http://127.0.0.1:4001';
const TWO = 'http://127.0.0.1:4002';

describe('createApiOrigins', () => {
  it('takes turns', () => {
    const origins = createApiOrigins([ONE, TWO], () => 0);
    expect([origins.next(), origins.next(), origins.next()]).toEqual([ONE, TWO, ONE]);
  });

  it('passes over a resting origin until its rest ends', () => {
    let nowMs = 0;
    const origins = createApiOrigins([ONE, TWO], () => nowMs);
    origins.rest(ONE);
    expect([origins.next(), origins.next()]).toEqual([TWO, TWO]);
    nowMs = 2_000;
    expect(origins.next()).toBe(ONE);
  });

  it('asks the one that has rested longest when all rest', () => {
    let nowMs = 0;
    const origins = createApiOrigins([ONE, TWO], () => nowMs);
    origins.rest(TWO);
    nowMs = 10;
    origins.rest(ONE);
    expect(origins.next()).toBe(TWO);
  });
});

describe('mayAskAnother', () => {
  it('repeats a change only when it never left', () => {
    expect(mayAskAnother('POST', 'ECONNREFUSED')).toBe(true);
    expect(mayAskAnother('POST', 'ECONNRESET')).toBe(false);
    expect(mayAskAnother('GET', 'ECONNRESET')).toBe(true);
    expect(mayAskAnother('GET', null)).toBe(false);
  });
});

describe('connectionCode', () => {
  it("finds the system's code under the proxy's wrapping", () => {
    const system = Object.assign(new Error('connect'), { code: 'ECONNREFUSED' });
    const wrapped = Object.assign(new Error('proxy', { cause: system }), { code: 'FST_REPLY_FROM' });
    expect(connectionCode(wrapped)).toBe('ECONNREFUSED');
    expect(connectionCode(new Error('plain'))).toBeNull();
  });
});
