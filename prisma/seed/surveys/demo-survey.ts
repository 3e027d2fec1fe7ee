import type { MeasuringMethod, SectionFormKind } from '@gusset/contracts/cargo';
import type { FreeSection, SurveyExtras } from '@gusset/contracts/survey';
import type { LengthUnit } from '@gusset/units';
import type { ModelName } from '../vehicle-models.ts';

/** What was typed at each lettered dimension; an entry of its own where it was not taken with the tape. */
export type DemoReadings = Readonly<
  Record<string, string | { readonly typed: string; readonly method: MeasuringMethod }>
>;

export type DemoSurvey = {
  /** By which the demo's jobs name it. */
  readonly name: string;
  readonly model: ModelName;
  readonly formKind: SectionFormKind;
  readonly spaceName: string;
  readonly seatState: string;
  readonly unit: LengthUnit;
  readonly takenBy: 'tomas' | 'daniel';
  /** Open days before today. */
  readonly daysAgo: number;
  readonly free?: FreeSection;
  readonly readings: DemoReadings;
  readonly extras?: Partial<Omit<SurveyExtras, 'free'>>;
  readonly notes?: string;
  /** False = still being measured. */
  readonly settled: boolean;
  /** Measured again later: the letters that changed make the next revision. */
  readonly again?: { readonly daysAgo: number; readonly readings: DemoReadings; readonly notes: string };
};
