// A job of the demo as data: what was typed on its sheets, how many open days ago, and by whom.
import type { BoxInput } from '@gusset/contracts/box';
import type { BriefInput } from '@gusset/contracts/brief';
import type { DesignLetter, SoundDesign, SoundInput } from '@gusset/contracts/sound';
import type { LengthUnit } from '@gusset/units';

/** Open days before today. */
export type DaysAgo = number;

export type DemoBrief = Partial<Omit<BriefInput, 'wishedOn'>> & {
  readonly daysAgo: DaysAgo;
  /** Open days from today; null = no wish. */
  readonly wishedIn?: number;
  /** False = something is still open, so it is no more than a draft. */
  readonly issued: boolean;
};

/** What a design differs in from one closed box of the same drivers. */
type DemoDesign = Partial<Omit<SoundDesign, 'driverId' | 'count' | 'drive' | 'targetNet'>>;

export type DemoSound = DemoDesign & {
  readonly notes?: string;
  readonly target?: SoundInput['target'];
  readonly letter?: DesignLetter;
  readonly name?: string;
  /** Laid beside: the same drivers and power in another box. */
  readonly beside?: readonly (DemoDesign & {
    readonly letter: DesignLetter;
    readonly name: string;
    readonly litres: string;
  })[];
  readonly daysAgo: DaysAgo;
  readonly driver: string;
  readonly count: number;
  readonly watts: number;
  readonly litres: string;
};

export type DemoBox = Partial<Pick<BoxInput, 'slopedFace' | 'lining' | 'bracing' | 'notes' | 'baffle'>> & {
  readonly daysAgo: DaysAgo;
  readonly shape: BoxInput['shape'];
  readonly unit?: LengthUnit;
  readonly width: string;
  readonly height: string;
  /** Typed first; then the depth is set for the net volume that the sound sheet wants. */
  readonly depth: string;
  readonly depthTop?: string;
  readonly board: string;
  readonly baffleBoard?: string;
  /** Code of the finish, and the faces that it covers. */
  readonly finish: string;
  readonly faces: readonly (keyof BoxInput['finishes'])[];
  readonly grille?: string;
  readonly terminal: boolean;
  readonly issued: boolean;
};

export type DemoJob = {
  /** By which the demo's later steps name it. */
  readonly name: string;
  readonly title: string;
  readonly customer: string;
  readonly plate: string;
  readonly openedDaysAgo: DaysAgo;
  readonly brief: DemoBrief;
  readonly survey?: { readonly name: string; readonly daysAgo: DaysAgo; readonly notes?: string };
  readonly sound?: DemoSound;
  readonly box?: DemoBox;
};
