// Sheet 03, Sound: which drivers, in which box, with how much power behind which filters; what that does in this car.
export {
  FILL_EFFECT,
  FILL_WORDS,
  FILLS,
  type Fill,
  LEAK_Q,
  LEAK_WORDS,
  LEAKS,
  type Leak,
} from './box-air.ts';
export { keptSoundInput, mostCurrent, toSoundInput, toSoundResult } from './earlier-sheets.ts';
export {
  EMPTY_PORT,
  EMPTY_RADIATOR,
  ENCLOSURE_WORDS,
  ENCLOSURES,
  type EnclosureKind,
  type SoundPort,
  type SoundRadiator,
} from './enclosure-parts.ts';
export {
  CABINS,
  type CabinChoice,
  DESIGN_LETTERS,
  type DesignLetter,
  designOf,
  EMPTY_DESIGN,
  EMPTY_SOUND_INPUT,
  type SoundDesign,
  type SoundInput,
  type SoundTarget,
  type SoundVariant,
  soundInputSchema,
} from './input.ts';
export type {
  CabinCurve,
  ComparedCurves,
  ComparedDesign,
  Contradiction,
  DriverFact,
  SolvedDesign,
  SoundAmplifierResult,
  SoundChamber,
  SoundFacts,
  SoundPortResult,
  SoundRadiatorResult,
  SoundResult,
  SoundVariantResult,
  Stretch,
  TargetResult,
} from './result.ts';
export {
  BAND_LIMIT,
  FILTER_ALIGNMENT_WORDS,
  FILTER_ALIGNMENTS,
  type SoundAmplifier,
  type SoundBand,
  type SoundPass,
} from './signal.ts';
export type { TypedFigureValue, TypedLitres } from './typed.ts';
