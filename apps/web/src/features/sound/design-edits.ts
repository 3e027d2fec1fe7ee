// Designs side by side on one sheet: keep one, choose another, take one away. Pure: input in, changes out.
import { type DesignLetter, designOf, type SoundInput, type SoundVariant } from '@gusset/contracts/sound';
import { freeLetter } from '@gusset/sheets';

type Changes = Partial<SoundInput>;

const taken = ({ letter, variants }: SoundInput): readonly DesignLetter[] => [
  letter,
  ...variants.map((variant) => variant.letter),
];

const byLetter = (variants: readonly SoundVariant[]): SoundVariant[] =>
  [...variants].sort((a, b) => a.letter.localeCompare(b.letter, 'en'));

/** The design as it stands now is laid beside; the sheet goes on under the next free letter. Null = six are kept. */
export function keepBeside(input: SoundInput): Changes | null {
  const letter = freeLetter(taken(input));
  if (letter === null) return null;
  const kept: SoundVariant = { letter: input.letter, name: input.name, design: designOf(input) };
  return { letter, name: '', variants: byLetter([...input.variants, kept]) };
}

/** The design of `letter` becomes the one that counts; the one that did is laid beside. */
export function chooseDesign(input: SoundInput, letter: DesignLetter): Changes {
  const chosen = input.variants.find((variant) => variant.letter === letter);
  if (chosen === undefined) return {};
  const laidBeside: SoundVariant = { letter: input.letter, name: input.name, design: designOf(input) };
  const others = input.variants.filter((variant) => variant.letter !== letter);
  return {
    ...chosen.design,
    letter,
    name: chosen.name,
    variants: byLetter([...others, laidBeside]),
  };
}

export function removeDesign({ variants }: SoundInput, letter: DesignLetter): Changes {
  return { variants: variants.filter((variant) => variant.letter !== letter) };
}

export function renameDesign(
  { letter: own, variants }: SoundInput,
  letter: DesignLetter,
  name: string,
): Changes {
  if (letter === own) return { name };
  return {
    variants: variants.map((variant) => (variant.letter === letter ? { ...variant, name } : variant)),
  };
}
