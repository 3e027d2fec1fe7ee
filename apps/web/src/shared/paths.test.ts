import { describe, expect, it } from 'vitest';
import { JOB_SHEETS, jobSheetOf, paths, safeNext } from './paths.ts';

describe('paths', () => {
  it('escapes what it puts into an address', () => {
    expect(paths.customer('a/b?c')).toBe('/customers/a%2Fb%3Fc');
    expect(paths.signIn('/jobs/2417/box')).toBe('/sign-in?next=%2Fjobs%2F2417%2Fbox');
  });

  it('opens a job at its first sheet', () => {
    expect(paths.job(2417)).toBe(`/jobs/2417/${JOB_SHEETS[0].slug}`);
  });
});

describe('jobSheetOf', () => {
  it('knows the sheets and nothing else', () => {
    expect(jobSheetOf('box')).toMatchObject({ number: 4, name: 'Box' });
    expect(jobSheetOf('boxes')).toBeNull();
  });

  it('numbers the set without gaps', () => {
    expect(JOB_SHEETS.map(({ number }) => number)).toEqual(JOB_SHEETS.map((_, index) => index + 1));
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
