// The fits, as threads do them: plain data in and out. Tens to hundreds of milliseconds each.
import {
  type CarSweeps,
  carTransfer,
  driverFromSweeps,
  fitBuiltBox,
  type SecondSweep,
} from '@gusset/acoustics';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import type {
  BuiltBoxFit,
  DriverBench,
  DriverFromSweeps,
  SweepColumns,
  TransferAnswer,
  TransferSetting,
} from '@gusset/contracts/measurement';
import type { Refusal } from '@gusset/units';
import type { ComputeTask } from '../compute/compute-task.ts';

export const fitDriverTask: ComputeTask<
  { readonly freeAir: SweepColumns; readonly second: SecondSweep | null; readonly bench: DriverBench },
  DriverFromSweeps | Refusal
> = ({ freeAir, second, bench }) => driverFromSweeps(freeAir, second, bench);

export const fitBuiltBoxTask: ComputeTask<
  {
    readonly drawn: SoundSystemInput;
    readonly sweep: SweepColumns;
    readonly blocked: SweepColumns | null;
  },
  BuiltBoxFit | Refusal
> = ({ drawn, sweep, blocked }) => fitBuiltBox(drawn, sweep, blocked);

export const carTransferTask: ComputeTask<
  { readonly sweeps: CarSweeps; readonly setting: TransferSetting },
  TransferAnswer | Refusal
> = ({ sweeps, setting }) => carTransfer(sweeps, setting);
