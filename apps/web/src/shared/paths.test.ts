import { describe, expect, it } from 'vitest';
import { paths, safeNext, sheetKindOf } from './paths.ts';

describe('paths', () => {
  it('escapes what it puts into an address', () => {
    expect(paths.customer('a/b?c')).toBe('/customers/a%2Fb%3Fc');
    expect(paths.signIn('/jobs/2417/box')).toBe('/sign-in?next=%2Fjobs%2F2417%2Fbox');
  });

  it('opens a job at its first sheet', () => {
    expect(paths.job(2417)).toBe('/jobs/2417/brief');
  });
});

describe('sheetKindOf', () => {
  it('knows the sheets and nothing else', () => {
    expect(sheetKindOf('box')).toBe('box');
    expect(sheetKindOf('boxes')).toBeNull();
  });
});

describe('safeNext', () => {
  it('keeps a path of this app', () => {
    expect(safeNext('/jobs/2417/box?view=side')).toBe('/jobs/2417/box?view=side');
  });

  it.each(['https://elsewhere.example', '//elsewhere.example', '/\\elsewhere.example', '', null, undefined])(
    'goes home instead of to %s',
    (next) => {
      expect(safeNext(next)).toBe('/');
    },
  );
});
