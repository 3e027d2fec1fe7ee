import type { CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { CuttingUpstream } from '@gusset/sheets';
import type { TypedLength } from '@gusset/units';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';

export type CuttingJobSheet = JobSheet<CuttingInput, CuttingFacts, CuttingUpstream, CuttingResult>;

export type SettingsProps = {
  readonly sheet: CuttingJobSheet;
  readonly errorOf: (field: string) => string | null;
  readonly rule: LengthRule;
};

export type LengthRule = {
  /** With its unit, for sentences. */
  readonly words: (mm: number) => string;
  /** Bare, for drawings and tables that state the unit once. */
  readonly drawn: (mm: number) => string;
  readonly unit: 'mm' | 'in';
};

/** As a draft keeps it: the note of the field stays on the screen. */
export function keptLength(length: TypedLength | null) {
  return length === null ? null : { mm: length.mm, typed: length.typed, unit: length.unit };
}
