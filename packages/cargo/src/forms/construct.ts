// From a form and its values to corners and walls.
import type { SectionForm } from '@gusset/contracts/cargo';
import { constructBehindSeat } from './behind-seat.ts';
import type { Construction, DimensionValues } from './construction.ts';
import { constructFootwell } from './footwell.ts';
import { constructFreePoints, constructStations } from './free-section.ts';
import { constructHatchEstate } from './hatch-estate.ts';
import { constructSaloonBoot } from './saloon-boot.ts';
import { constructSpareWheelWell } from './spare-wheel-well.ts';
import { constructUnderSeat } from './under-seat.ts';

export function construct(form: SectionForm, values: DimensionValues): Construction {
  const plan = form.construction;
  switch (plan.by) {
    case 'saloon-boot':
      return constructSaloonBoot(form, values);
    case 'hatch-estate':
      return constructHatchEstate(form, values);
    case 'behind-seat':
      return constructBehindSeat(form, values);
    case 'under-seat':
      return constructUnderSeat(form, values);
    case 'spare-wheel-well':
      return constructSpareWheelWell(form, values);
    case 'footwell':
      return constructFootwell(form, values);
    case 'points':
      return constructFreePoints(form, values, plan.corners);
    case 'stations':
      return constructStations(form, values, plan.stationsMm);
  }
}
