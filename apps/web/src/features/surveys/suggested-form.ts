// Which form a body most often calls for; a person can choose another.

import type { VehicleModelInput } from '@gusset/contracts/records';

const BY_BODY = {
  saloon: 'saloon-boot',
  coupe: 'saloon-boot',
  hatch: 'hatch-estate',
  estate: 'hatch-estate',
  suv: 'hatch-estate',
  van: 'hatch-estate',
  pickup: 'behind-seat',
} as const satisfies Record<VehicleModelInput['body'], string>;

export function suggestedForm(body: VehicleModelInput['body']) {
  return BY_BODY[body];
}
