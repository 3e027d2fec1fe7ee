import { describe, expect, it } from 'vitest';
import { searchText } from './search-text.ts';

describe('searchText', () => {
  it('is nothing for blanks', () => {
    expect(searchText('  \t ')).toBeNull();
  });

  it('looks for each word and takes pattern signs as they are', () => {
    expect(searchText('  50%  Halden_X\\ ')).toMatchObject({
      text: '50% halden_x\\',
      patterns: ['%50\\%%', '%halden\\_x\\\\%'],
      prefix: '50\\% halden\\_x\\\\%',
    });
  });

  it('reads a job number with or without its sign, and no other number', () => {
    expect(searchText('#2417')?.number).toBe(2417);
    expect(searchText('2417')?.number).toBe(2417);
    expect(searchText('24.17')?.number).toBeNull();
    expect(searchText('12345678901')?.number).toBeNull();
  });

  it('compares plates without their gaps', () => {
    expect(searchText('qr-17 ÄB')?.plate).toBe('qr17äb');
  });
});
