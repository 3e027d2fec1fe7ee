// How the box goes together: worked out from the box whenever it is shown.
import type { BoxSheetResult } from '@gusset/contracts/box';
import { type AssemblyPlan, USUAL_ADHESIVES } from '@gusset/contracts/cutting';
import type { CuttingInput } from '@gusset/contracts/cutting-sheet';
import { assemblyPlan } from '@gusset/cutting';
import type { Refusal } from '@gusset/units';

/** A refusal names `temperatureC` where the glue does not set in the cold. */
export function glueUp(
  { design, box }: Pick<BoxSheetResult, 'design' | 'box'>,
  { gluing }: Pick<CuttingInput, 'gluing'>,
): AssemblyPlan | Refusal {
  return assemblyPlan({
    design,
    box,
    adhesive: USUAL_ADHESIVES[gluing.adhesive],
    temperatureC: gluing.temperatureC,
  });
}
