// The letters of a form in the order in which they matter at the car.

import type { Dimension, SectionForm } from '@gusset/contracts/cargo';
import { isWorthTaking } from '@gusset/sheets';

export type DimensionGroup = {
  readonly id: string;
  readonly title: string;
  readonly dimensions: readonly Dimension[];
};

export function dimensionGroups(form: SectionForm): readonly DimensionGroup[] {
  const needed = form.dimensions.filter(({ need }) => need === 'required');
  const worth = form.dimensions.filter(isWorthTaking);
  const rest = form.dimensions.filter((each) => each.need !== 'required' && !isWorthTaking(each));
  return [
    { id: 'needed', title: 'Needed to build it', dimensions: needed },
    { id: 'worth', title: 'Makes the walls surer', dimensions: worth },
    { id: 'rest', title: 'Detail and checks', dimensions: rest },
  ].filter(({ dimensions }) => dimensions.length > 0);
}
