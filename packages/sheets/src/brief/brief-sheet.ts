import {
  type BriefInput,
  type BriefResult,
  briefInputSchema,
  LISTENING_AIM_WORDS,
} from '@gusset/contracts/brief';
import {
  incomplete,
  type KeyFigure,
  type Missing,
  ready,
  type SheetDefinition,
} from '../sheet-definition.ts';

/** Sheet 01. Reads nothing; ready once the wish and the aim are written down. */
export const briefSheet: SheetDefinition<BriefInput, null, null, BriefResult> = {
  kind: 'brief',
  engineVersion: 1,
  optionalReads: [],
  inputSchema: briefInputSchema,
  emptyInput: () => ({
    wish: '',
    aim: null,
    place: '',
    keepFree: [],
    freeDepth: null,
    budgetMinor: null,
    wishedOn: null,
    broughtParts: [],
    notes: '',
  }),
  compute(input) {
    const missing: Missing[] = [];
    if (input.wish === '')
      missing.push({ field: 'wish', what: 'what the system should do, in the customer’s words' });
    if (input.aim === null)
      missing.push({ field: 'aim', what: 'what matters most: deep, loud, smooth or balanced' });
    return input.aim === null || missing.length > 0
      ? incomplete(missing)
      : ready({ ...input, aim: input.aim });
  },
  keyFigures(result) {
    const figures: KeyFigure[] = [
      { key: 'wish', label: 'Wish', value: result.wish },
      { key: 'aim', label: 'Aim', value: LISTENING_AIM_WORDS[result.aim] },
      { key: 'place', label: 'Place', value: result.place },
      { key: 'keepFree', label: 'Must stay free', value: result.keepFree.join(', ') },
      { key: 'freeDepth', label: 'Floor depth to leave free', value: result.freeDepth?.typed ?? '' },
      {
        key: 'budget',
        label: 'Budget',
        value: result.budgetMinor === null ? '' : String(result.budgetMinor / 100),
      },
      { key: 'wishedOn', label: 'Wished for', value: result.wishedOn ?? '' },
      {
        key: 'brought',
        label: 'Brought by customer or sponsor',
        value: result.broughtParts
          .filter((part) => part.bringer !== 'shop')
          .map((part) => `${part.description} (${part.bringer})`)
          .join(', '),
      },
    ];
    return figures.filter((figure) => figure.value !== '');
  },
  factFigures: () => [],
};
