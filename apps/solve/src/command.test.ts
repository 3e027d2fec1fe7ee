import { describe, expect, it } from 'vitest';
import { readCommand } from './command.ts';

describe('readCommand', () => {
  it('takes an engine alone, on two seconds and seed 1', () => {
    expect(readCommand(['sheets'])).toEqual({
      kind: 'solve',
      engine: 'sheets',
      options: { seconds: 2, seed: 1 },
    });
  });

  it('takes a budget and a seed', () => {
    expect(readCommand(['plan', '--seconds', '0.25', '--seed=7'])).toEqual({
      kind: 'solve',
      engine: 'plan',
      options: { seconds: 0.25, seed: 7 },
    });
  });

  it('asks for the schema', () => {
    expect(readCommand(['response', '--schema'])).toEqual({ kind: 'schema', engine: 'response' });
  });

  it.each([
    [[]],
    [['sheets', 'plan']],
    [['sheets', '--fast']],
    [['sheets', '--seconds', '0']],
    [['sheets', '--seconds', 'soon']],
    [['sheets', '--seconds', '1e9']],
    [['sheets', '--seed', '1.5']],
    [['sheets', '--seed', '']],
  ])('says what is wrong with %j', (args) => {
    const command = readCommand(args);
    expect(command.kind).toBe('misuse');
    expect(command.kind === 'misuse' && command.message).not.toBe('');
  });
});
