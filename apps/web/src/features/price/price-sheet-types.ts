import type { PriceFacts, PriceInput, PriceResult } from '@gusset/contracts/price';
import type { PriceUpstream } from '@gusset/sheets';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';

export type PriceJobSheet = JobSheet<PriceInput, PriceFacts, PriceUpstream, PriceResult>;
