// The numbered sheets of a job and how each travels: its number, what it reads, who may read and edit it. No schema
// here: every page of a job names its sheets, and need not send the validator for that.
import type { Permission } from '../access/index.ts';

export const SHEET_KINDS = ['brief', 'survey', 'sound', 'box', 'cutting', 'parts', 'price', 'plan'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export type SheetPlace = {
  /** Stands on the index and in the title block; stays the same when more sheets come. */
  readonly number: string;
  readonly title: string;
  /** The sheets whose results it reads; all stand above it. */
  readonly reads: readonly SheetKind[];
  /** Whose sheet it is: one a job, or one for each of the job's enclosures. */
  readonly belongsTo: 'job' | 'enclosure';
  readonly readPermission: Permission;
  readonly editPermission: Permission;
};

export const SHEETS: Record<SheetKind, SheetPlace> = {
  brief: {
    number: '01',
    title: 'Brief',
    reads: [],
    belongsTo: 'job',
    readPermission: 'job.read',
    editPermission: 'job.edit',
  },
  survey: {
    number: '02',
    title: 'Survey',
    reads: [],
    belongsTo: 'job',
    readPermission: 'job.read',
    editPermission: 'survey.edit',
  },
  sound: {
    number: '03',
    title: 'Sound',
    reads: ['brief'],
    belongsTo: 'enclosure',
    readPermission: 'job.read',
    editPermission: 'design.edit',
  },
  box: {
    number: '04',
    title: 'Box',
    reads: ['survey', 'sound'],
    belongsTo: 'enclosure',
    readPermission: 'job.read',
    editPermission: 'design.edit',
  },
  cutting: {
    number: '05',
    title: 'Cutting',
    reads: ['box'],
    belongsTo: 'job',
    readPermission: 'job.read',
    editPermission: 'design.edit',
  },
  parts: {
    number: '07',
    title: 'Parts',
    reads: ['brief', 'sound', 'box', 'cutting'],
    belongsTo: 'job',
    readPermission: 'job.read',
    editPermission: 'parts.edit',
  },
  price: {
    number: '08',
    title: 'Price',
    reads: ['parts'],
    belongsTo: 'job',
    readPermission: 'money.read',
    editPermission: 'price.edit',
  },
  plan: {
    number: '09',
    title: 'Plan',
    reads: ['parts', 'price'],
    belongsTo: 'job',
    readPermission: 'job.read',
    editPermission: 'plan.edit',
  },
};

/** One difference between what a sheet was issued from and what stands now. */
export type SheetChange = {
  /** Which sheet or record it comes from: `04 Box`, `Quince Q-10`. */
  readonly source: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
};

/** Revision letters: 1 = A, 26 = Z, 27 = AA. */
export function revisionLetter(revision: number): string {
  let rest = revision;
  let letters = '';
  while (rest > 0) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
    rest = Math.floor((rest - 1) / 26);
  }
  return letters;
}
