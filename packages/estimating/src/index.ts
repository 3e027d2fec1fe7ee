export { compareQuotes } from './compare-quotes.ts';
export { hideCosts } from './hide-costs.ts';
export { labourFromTasks } from './labour-from-tasks.ts';
export { SUPPLIES_KEY } from './line-amounts.ts';
export { type OverrunAnswer, overrunOf } from './overrun.ts';
export { priceQuote } from './price-quote.ts';
export { carpetRollM, coatingLitres, suppliesFromBox } from './supplies-from-box.ts';
export { USUAL_CARPET, USUAL_JOINTS, USUAL_PAINT, USUAL_TEXTURED_COAT } from './usual-supplies.ts';
