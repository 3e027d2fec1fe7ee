// Sheet 03: the design that counts, others beside it, the car they play in and the band they are meant to keep.
import type { BriefResult } from '@gusset/contracts/brief';
import {
  type ComparedDesign,
  type DriverFact,
  designOf,
  EMPTY_SOUND_INPUT,
  type SolvedDesign,
  type SoundFacts,
  type SoundInput,
  type SoundResult,
  type SoundVariant,
  type SoundVariantResult,
  soundInputSchema,
  toSoundInput,
  toSoundResult,
} from '@gusset/contracts/sound';
import { incomplete, ready, refused, type SheetDefinition, type SheetOutcome } from '../sheet-definition.ts';
import { cabinOf, missingOfCabin, type UsedCabin } from './cabin-of.ts';
import { comparedCurves, keptCurves } from './kept-curves.ts';
import { solveDesign } from './solve-design.ts';
import { soundFactFigures, soundKeyFigures } from './sound-figures.ts';
import { missingOfTarget, refuseTarget, targetResult } from './target-band.ts';

export type SoundUpstream = { readonly brief?: BriefResult | null };

export const soundSheet: SheetDefinition<SoundInput, SoundFacts, SoundUpstream, SoundResult> = {
  kind: 'sound',
  engineVersion: 2,
  optionalReads: ['brief'],
  inputSchema: soundInputSchema,
  emptyInput: () => EMPTY_SOUND_INPUT,
  compute: (input, facts) => computeSound(toSoundInput(input), facts),
  keyFigures: soundKeyFigures,
  factFigures: soundFactFigures,
  // Sheets that read this one meet results of every age, and always in today's shape.
  shared: { result: toSoundResult, keyFigures: soundKeyFigures },
};

function computeSound(input: SoundInput, facts: SoundFacts): SheetOutcome<SoundResult> {
  const used = cabinOf(input.cabin, facts);
  const outcome = solveDesign(designOf(input), driverFor(input.driverId, facts), used);
  const missing = [...missingOfCabin(input.cabin, facts), ...missingOfTarget(input.target)];
  if (outcome.state === 'incomplete') return incomplete([...outcome.missing, ...missing]);
  if (outcome.state === 'refused') return outcome;
  if (missing.length > 0) return incomplete(missing);
  const refusals = refuseTarget(input.target);
  if (refusals.length > 0) return refused(refusals);
  const { result } = outcome;
  return ready({
    ...result,
    curves: keptCurves(result.curves),
    letter: input.letter,
    name: input.name,
    cabin: used.choice,
    cabinLongestM: used.longestM,
    cabinLabel: used.label,
    target: targetResult(input.target, result.curves),
    variants: input.variants.map((variant) => variantResult(variant, facts, used)),
  });
}

/** The record behind an id, whichever design it was read for. */
function driverFor(driverId: string | null, { driver, otherDrivers = [] }: SoundFacts): DriverFact | null {
  if (driverId === null) return null;
  return [driver, ...otherDrivers].find((known) => known?.id === driverId) ?? null;
}

/** A design beside the chosen one never stops the sheet: what it lacks is said where its curve would be. */
function variantResult(
  { letter, name, design }: SoundVariant,
  facts: SoundFacts,
  used: UsedCabin,
): SoundVariantResult {
  const outcome = solveDesign(design, driverFor(design.driverId, facts), used);
  if (outcome.state === 'ready') return { letter, name, state: 'ready', design: compared(outcome.result) };
  const why =
    outcome.state === 'incomplete'
      ? `Still missing: ${outcome.missing.map(({ what }) => what).join(', ')}`
      : outcome.refusals.map((refusal) => refusal.why).join('; ');
  return { letter, name, state: 'open', why };
}

function compared({
  curves,
  findings: _findings,
  parameters: _parameters,
  contradictions: _contradictions,
  displacementLitres: _displacement,
  amplifier: _amplifier,
  ...figures
}: SolvedDesign): ComparedDesign {
  return { ...figures, curves: comparedCurves(curves) };
}
