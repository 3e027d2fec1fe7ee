import type { CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { CuttingUpstream } from '@gusset/sheets';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';

export type CuttingJobSheet = JobSheet<CuttingInput, CuttingFacts, CuttingUpstream, CuttingResult>;

export type SettingsProps = {
  readonly sheet: CuttingJobSheet;
  readonly errorOf: (field: string) => string | null;
  readonly rule: LengthRule;
};
