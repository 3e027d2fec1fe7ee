import { describe, expect, it } from 'vitest';
import { doorSentence } from './door-error.ts';

describe('doorSentence', () => {
  it('does not say which of the two was wrong', () => {
    const sentence = doorSentence({ code: 'INVALID_EMAIL_OR_PASSWORD', status: 401 });
    expect(sentence).toContain('don’t go together');
  });

  it('asks to wait after too many tries, whatever else it says', () => {
    expect(doorSentence({ code: 'INVALID_EMAIL_OR_PASSWORD', status: 429 })).toContain('Wait a minute');
  });

  it("passes on the API's own sentence about a password", () => {
    const message = 'Use at least five different characters.';
    expect(doorSentence({ code: 'PASSWORD_NOT_ACCEPTED', message, status: 400 })).toBe(message);
  });

  it('keeps unknown texts of the library from the screen', () => {
    expect(doorSentence({ code: 'SOMETHING_NEW', message: 'internal detail', status: 500 })).not.toContain(
      'internal detail',
    );
  });
});
