// Every sheet that exists. A kind that is missing here is not shown anywhere.
import { SHEET_KINDS, type SheetKind } from '@gusset/contracts/sheet';
import { boxBinding } from './bindings/box.binding.ts';
import { briefBinding } from './bindings/brief.binding.ts';
import { cuttingBinding } from './bindings/cutting.binding.ts';
import { partsBinding } from './bindings/parts.binding.ts';
import { planBinding } from './bindings/plan.binding.ts';
import { priceBinding } from './bindings/price.binding.ts';
import { soundBinding } from './bindings/sound.binding.ts';
import { surveyBinding } from './bindings/survey.binding.ts';
import { type AnySheetBinding, anyBinding } from './sheet-binding.ts';

const BINDINGS: Readonly<Partial<Record<SheetKind, AnySheetBinding>>> = {
  brief: anyBinding(briefBinding),
  survey: anyBinding(surveyBinding),
  sound: anyBinding(soundBinding),
  parts: anyBinding(partsBinding),
  plan: anyBinding(planBinding),
  box: anyBinding(boxBinding),
  cutting: anyBinding(cuttingBinding),
  price: anyBinding(priceBinding),
};

/** The kinds that exist, in the order of their numbers. */
export const BOUND_KINDS: readonly SheetKind[] = SHEET_KINDS.filter((kind) => BINDINGS[kind] !== undefined);

export function bindingOf(kind: SheetKind): AnySheetBinding {
  const binding = BINDINGS[kind];
  if (binding === undefined) throw new Error(`the sheet ${kind} does not exist`);
  return binding;
}
