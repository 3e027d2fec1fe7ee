// Boxes worth offering for what stands on the sheet: each by what it does best, with the changes that set it.
import { flattestInCar, suggestAlignments, symmetricBandpass } from '@gusset/acoustics';
import type { AlignmentStrength, SoundSystemInput } from '@gusset/contracts/acoustics';
import type { SoundInput } from '@gusset/contracts/sound';
import { isRefusal } from '@gusset/units';

/** Outside of this nobody builds a box for a car. */
const LEAST_LITRES = 1;
const MOST_LITRES = 500;
/** Level of a bandpass box in the middle of its band beside the same drivers on a wall, dB. */
const BANDPASS_GAINS = [
  { gainDb: 0, words: 'Widest' },
  { gainDb: 3, words: 'Louder, narrower' },
  { gainDb: 6, words: 'Loudest, narrowest' },
] as const;

const STRENGTH_WORDS: Readonly<Record<AlignmentStrength, string>> = {
  flattest: 'Flattest',
  deepest: 'Deepest',
  gentlest: 'Gentlest fall',
  'shortest-ringing': 'Shortest ringing',
  smallest: 'Smallest',
};

export type Suggestion = {
  readonly key: string;
  /** What it does, in the shop's words. */
  readonly words: string;
  /** Its figures, and what the books call it. */
  readonly detail: string;
  readonly changes: Partial<SoundInput>;
};

const litres = (value: number) => ({ litres: Number(value.toFixed(1)), typed: value.toFixed(1) });
const hertz = (value: number) => ({ value: Number(value.toFixed(1)), typed: value.toFixed(1) });
const isBuilt = (value: number): boolean => value >= LEAST_LITRES && value <= MOST_LITRES;

/** The boxes that theory knows for these drivers on this source; `system` is the sheet's own design. */
export function suggestionsFor(input: SoundInput, system: SoundSystemInput): readonly Suggestion[] {
  switch (input.enclosure) {
    case 'closed':
    case 'vented':
      return alignmentsFor(input, system);
    case 'single-tuned-bandpass':
      return bandpassFor(input, system);
    default:
      return [];
  }
}

/** Sizing does not count what is lost in the air of the box before it is known: driver, wiring and source only. */
function settingOf({ driver, array, source, enclosure, air }: SoundSystemInput) {
  const chamber = 'chamber' in enclosure ? enclosure.chamber : 'rear' in enclosure ? enclosure.rear : null;
  return {
    driver,
    ...(array === undefined ? {} : { array }),
    ...(air === undefined ? {} : { air }),
    fillFactor: chamber?.fillFactor ?? 1,
    ql: chamber?.ql ?? null,
    qa: chamber?.qa ?? null,
    seriesOhm: (source.outputOhm ?? 0) + (source.cableOhm ?? 0),
  };
}

function alignmentsFor(input: SoundInput, system: SoundSystemInput): readonly Suggestion[] {
  const found = suggestAlignments(settingOf(system));
  if (isRefusal(found)) return [];
  return found.designs
    .filter(
      ({ kind, netLitres, strengths }) =>
        kind === input.enclosure && strengths.length > 0 && isBuilt(netLitres),
    )
    .map((box) => {
      const words = box.strengths.map((strength) => STRENGTH_WORDS[strength]).join(', ');
      const corner = `${box.textbook}, −3 dB at ${box.f3Hz.toFixed(0)} Hz`;
      const key = `${box.textbook} ${box.netLitres}`;
      const net = `${box.netLitres.toFixed(1)} L`;
      return box.kind === 'closed'
        ? { key, words, detail: `${net} · ${corner}`, changes: { targetNet: litres(box.netLitres) } }
        : {
            key,
            words,
            detail: `${net}, ${box.tuningHz.toFixed(1)} Hz · ${corner}`,
            changes: tuned(input, box.netLitres, box.tuningHz),
          };
    });
}

const tuned = (input: SoundInput, netLitres: number, tuningHz: number): Partial<SoundInput> => ({
  targetNet: litres(netLitres),
  port: { ...input.port, by: 'tuning', tuning: hertz(tuningHz) },
});

function bandpassFor(input: SoundInput, system: SoundSystemInput): readonly Suggestion[] {
  return BANDPASS_GAINS.flatMap(({ gainDb, words }): Suggestion[] => {
    const box = symmetricBandpass({ ...settingOf(system), by: { aim: 'gain', gainDb } });
    if (isRefusal(box) || !isBuilt(box.rearLitres) || !isBuilt(box.frontLitres)) return [];
    return [
      {
        key: `gain ${gainDb}`,
        words,
        detail: `${box.rearLitres.toFixed(1)} + ${box.frontLitres.toFixed(1)} L · ${box.lowHz.toFixed(0)} to ${box.highHz.toFixed(0)} Hz`,
        changes: {
          targetNet: litres(box.rearLitres),
          front: { ...input.front, net: litres(box.frontLitres) },
          port: { ...input.port, by: 'tuning', tuning: hertz(box.tuningHz) },
        },
      },
    ];
  });
}

const CAR_LITRES = { leastLitres: 5, mostLitres: 150 };

/** The volume and tuning whose level in this car is evenest from 30 to 80 Hz; null where there is none. */
export function evenestInCar(input: SoundInput, system: SoundSystemInput): Partial<SoundInput> | null {
  const { frequenciesHz: _frequencies, ...asked } = system;
  const found = flattestInCar({ system: asked, litres: CAR_LITRES });
  if (isRefusal(found)) return null;
  const { netLitres, tuningHz } = found.best;
  return tuningHz === null ? { targetNet: litres(netLitres) } : tuned(input, netLitres, tuningHz);
}
