import type { DriverFigures } from '@gusset/contracts/records';

type Body = Omit<DriverFigures, 'dataSheet' | 'sideVents' | 'boltSizeMm'> & {
  readonly sideVents?: boolean;
  readonly boltSizeMm?: number;
};

/** What the carpenter needs; screws are M5 unless stated. */
export function driverBody({ sideVents = false, boltSizeMm = 5, ...rest }: Body) {
  return { ...rest, sideVents, boltSizeMm };
}
