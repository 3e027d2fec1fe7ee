// A sweep on its way in, as the form holds it.
import type {
  ColumnUnits,
  FiringDirection,
  SweepConditions,
  SweepReading,
  SweepUse,
} from '@gusset/contracts/measurement';

export type SweepDraft<Use extends SweepUse = SweepUse> = {
  readonly use: Use;
  readonly text: string;
  readonly fileName: string;
  readonly units: ColumnUnits;
  readonly conditions: SweepConditions;
  readonly place: string;
  readonly direction: FiringDirection | null;
  readonly notes: string;
  readonly takenOn: string | null;
};

export type ImportedReading = Omit<SweepReading, 'columns'>;

export function startDraft<Use extends SweepUse>(use: Use): SweepDraft<Use> {
  return {
    use,
    text: '',
    fileName: '',
    units: { magnitude: 'auto', phase: 'auto' },
    conditions: { addedMass: null, knownBox: null, trial: null },
    place: '',
    direction: null,
    notes: '',
    takenOn: null,
  };
}
