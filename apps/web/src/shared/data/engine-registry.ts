import type { SheetKind } from '@gusset/contracts/sheet';
import {
  type AnySheetDefinition,
  anySheet,
  boxSheet,
  briefSheet,
  cuttingSheet,
  partsSheet,
  planSheet,
  priceSheet,
  soundSheet,
  surveySheet,
} from '@gusset/sheets';

/** The sheets that the browser works out live. A new sheet joins with one line. */
export const ENGINES: Partial<Readonly<Record<SheetKind, AnySheetDefinition>>> = {
  brief: anySheet(briefSheet),
  survey: anySheet(surveySheet),
  sound: anySheet(soundSheet),
  box: anySheet(boxSheet),
  cutting: anySheet(cuttingSheet),
  parts: anySheet(partsSheet),
  price: anySheet(priceSheet),
  plan: anySheet(planSheet),
};
