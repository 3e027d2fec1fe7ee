import { describe, expect, it } from 'vitest';
import { passwordProblem } from './password-rules.ts';

describe('passwordProblem', () => {
  it('accepts four unrelated words', () => {
    expect(passwordProblem('lantern copper meadow violin', 'mira@example.com')).toBeNull();
  });
  it('accepts characters of any script', () => {
    expect(passwordProblem('Лодка-Тридцать-зелёных-окон', 'mira@example.com')).toBeNull();
    expect(passwordProblem('ランタン 銅 草原 バイオリン', 'mira@example.com')).toBeNull();
  });
  it.each(['password1234', 'qwertyuiop12', 'Gusset123456', '123456123456'])(
    'refuses %s as guessed first',
    (password) => {
      expect(passwordProblem(password, 'mira@example.com')).toContain('guess first');
    },
  );
  it('refuses one repeated character', () => {
    expect(passwordProblem('aaaaaaaaaaaaaa', 'mira@example.com')).toContain('five different');
  });
  it('refuses the name of the address', () => {
    expect(passwordProblem('mira-ilves-garage', 'mira.ilves@example.com')).toContain('e-mail name');
  });
});
