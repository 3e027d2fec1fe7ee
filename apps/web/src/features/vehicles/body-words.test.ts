import { describe, expect, it } from 'vitest';
import { yearsWords } from './body-words.ts';

describe('yearsWords', () => {
  it('says a span as people do, and nothing where none is known', () => {
    expect([
      yearsWords(2021, null),
      yearsWords(2018, 2022),
      yearsWords(2021, 2021),
      yearsWords(null, 2010),
      yearsWords(null, null),
    ]).toEqual(['2021 on', '2018 to 2022', '2021', 'to 2010', '']);
  });
});
