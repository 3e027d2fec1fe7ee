import { EMPTY_SOUND_INPUT, type SoundInput, soundInputSchema } from '@gusset/contracts/sound';
import { describe, expect, it } from 'vitest';
import { chooseDesign, keepBeside, removeDesign, renameDesign } from './design-edits.ts';

const litres = (value: number) => ({ litres: value, typed: String(value) });
const closed: SoundInput = {
  ...EMPTY_SOUND_INPUT,
  name: 'small',
  targetNet: litres(30),
  notes: 'for the estate',
};
const after = (input: SoundInput, changes: Partial<SoundInput> | null): SoundInput => ({
  ...input,
  ...changes,
});

describe('keepBeside', () => {
  it('lays the design beside under its letter and goes on with the next one', () => {
    const next = after(closed, keepBeside(closed));
    expect(next).toMatchObject({ letter: 'B', name: '', targetNet: litres(30) });
    expect(next.variants).toMatchObject([{ letter: 'A', name: 'small', design: { targetNet: litres(30) } }]);
    expect(soundInputSchema.parse(next)).toEqual(next);
  });
  it('keeps six and no more', () => {
    let input = closed;
    for (let kept = 0; kept < 5; kept++) input = after(input, keepBeside(input));
    expect(input.variants.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'D', 'E']);
    expect(keepBeside(input)).toBeNull();
  });
  it('takes a letter that came free', () => {
    const two = after(closed, keepBeside(closed));
    const one = after(two, removeDesign(two, 'A'));
    expect(after(one, keepBeside(one)).letter).toBe('A');
  });
});

describe('chooseDesign', () => {
  it('swaps the two and leaves what belongs to the sheet', () => {
    const two = { ...after(closed, keepBeside(closed)), targetNet: litres(55) };
    const back = after(two, chooseDesign(two, 'A'));
    expect(back).toMatchObject({
      letter: 'A',
      name: 'small',
      targetNet: litres(30),
      notes: 'for the estate',
    });
    expect(back.variants).toMatchObject([{ letter: 'B', design: { targetNet: litres(55) } }]);
  });
  it('changes nothing for a letter that is not there', () => {
    expect(chooseDesign(closed, 'F')).toEqual({});
  });
});

describe('renameDesign', () => {
  it('names the one that counts or one beside it', () => {
    const two = after(closed, keepBeside(closed));
    expect(renameDesign(two, 'B', 'deep')).toEqual({ name: 'deep' });
    expect(renameDesign(two, 'A', 'tight').variants).toMatchObject([{ letter: 'A', name: 'tight' }]);
  });
});
