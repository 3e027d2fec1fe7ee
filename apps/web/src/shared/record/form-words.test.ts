import { vehicleInputSchema, vehicleModelInputSchema } from '@gusset/contracts/records';
import { describe, expect, it } from 'vitest';
import { formWords } from './form-words.ts';

const wordsAt = (result: { error?: { issues: { path: PropertyKey[]; message: string }[] } }, path: string) =>
  result.error?.issues.find((issue) => issue.path.join('.') === path)?.message;

const MODEL = { make: 'Halden', model: 'Brisk', body: 'hatch' };

describe('formWords', () => {
  it('says what is accepted where the contract gives only bounds', () => {
    const parsed = vehicleModelInputSchema.safeParse(
      { ...MODEL, payloadKg: 9_000, yearFrom: 12.5 },
      { error: formWords },
    );
    expect(wordsAt(parsed, 'payloadKg')).toBe('At most 5000 is accepted.');
    expect(wordsAt(parsed, 'yearFrom')).toBe('A whole number is needed here.');
  });

  it('leaves the contract’s own sentences alone', () => {
    const parsed = vehicleModelInputSchema.safeParse({ ...MODEL, make: '' }, { error: formWords });
    expect(wordsAt(parsed, 'make')).toBe('Type a name.');
  });

  it('asks for a choice where none is made', () => {
    const parsed = vehicleInputSchema.safeParse({ customerId: '', modelId: null }, { error: formWords });
    expect(wordsAt(parsed, 'customerId')).toBe('Choose one.');
    expect(wordsAt(parsed, 'modelId')).toBe('This is needed.');
  });
});
