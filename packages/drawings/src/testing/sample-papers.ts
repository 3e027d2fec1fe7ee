// Papers of an invented shop, for tests and for looking at.
import type { QuotePaper, TitleBlock } from '@gusset/contracts/drawings';
import { formatLength } from '@gusset/units';
import type { CutSheetInput } from '../paper/cut-sheet-document.ts';
import type { DrawingSheet } from '../paper/draw-sheet-page.ts';
import type { SurveySheetInput } from '../paper/survey-sheet-document.ts';
import { cavitySection } from '../views/cavity-view.ts';
import { CAVITY, SHEET, SURVEY } from './sample-views.ts';

export const TITLE_BLOCK: TitleBlock = {
  shop: 'Quarry Road Sound',
  vehicle: 'Halden Brisk hatch, 2021',
  customer: 'R. Okafor',
  job: '2417',
  revision: 'C',
  drawn: 'M. Ilves',
  checked: null,
  units: 'mm',
  date: '24 November 2026',
  sheet: '04 Box',
};

export const QUOTE: QuotePaper = {
  paper: 'A4',
  locale: 'en-GB',
  currency: 'GBP',
  shop: {
    name: 'Quarry Road Sound',
    lines: ['4 Quarry Road, Tern Bay', '+44 1632 960 417', 'bench@quarryroad.example'],
    taxNumber: 'VAT GB 000 0000 00',
  },
  number: 'Q-2417',
  version: 2,
  issued: '24 November 2026',
  validUntil: '24 December 2026',
  customer: { name: 'R. Okafor', lines: ['12 Orrin Lane', 'Tern Bay'] },
  vehicle: 'Halden Brisk hatch, 2021',
  job: '2417',
  scope: [
    'One vented box behind the rear seats, 74 L net, tuned to 32 Hz, for one Quince 12 driver. Birch plywood, 18 mm, trimmed in charcoal carpet. The seats still fold and the jack stays within reach.',
    'Amplifier on a board under the parcel shelf, with fuse, cable and remote level at the dash.',
  ],
  sections: [
    {
      title: 'Box',
      lines: [
        {
          description: 'Box, built and trimmed',
          detail: 'Birch plywood 18 mm, slot port ½″ radius, carpet over all faces but the bottom',
          quantity: '1',
          unitPriceMinor: 46_200,
          amountMinor: 46_200,
        },
        {
          description: 'Quince 12 driver',
          detail: 'Two-year maker’s guarantee',
          quantity: '1',
          unitPriceMinor: 21_900,
          amountMinor: 21_900,
        },
      ],
    },
    {
      title: 'Power and wiring',
      lines: [
        {
          description: 'Medlar M-600 amplifier',
          detail: '',
          quantity: '1',
          unitPriceMinor: 31_500,
          amountMinor: 31_500,
        },
        {
          description: 'Cable, fuse holder 80 A, terminals',
          detail: '25 mm² copper, 5 m run',
          quantity: '1 set',
          unitPriceMinor: 8_450,
          amountMinor: 8_450,
        },
        {
          description: 'Fit, wire and set up',
          detail: '',
          quantity: '6.5 h',
          unitPriceMinor: 5_800,
          amountMinor: 37_700,
        },
        {
          description: 'Returning customer',
          detail: '',
          quantity: '',
          unitPriceMinor: null,
          amountMinor: -5_000,
        },
      ],
    },
  ],
  taxIncluded: false,
  subtotalMinor: 140_750,
  taxes: [{ name: 'VAT 20 %', baseMinor: 140_750, amountMinor: 28_150 }],
  totalMinor: 168_900,
  deposit: { amountMinor: 60_000, due: 'on approval' },
  terms: [
    'Prices hold until the day above. Work starts when the deposit is in and the parts are here.',
    'Changes after approval are a change order with its own price. What is taken out of the car is kept for you for 60 days.',
  ],
  note: '',
  approveUrl: 'https://quarryroad.example/q/7hK2-w9Qd',
};

export const CUT_SHEET: CutSheetInput = {
  paper: 'A4',
  language: 'en-GB',
  titleBlock: { ...TITLE_BLOCK, sheet: '05 Cutting', checked: 'S. Bello' },
  kerfMm: 3.2,
  formatLength: (lengthMm) => formatLength(lengthMm, { unit: 'mm', style: 'drawing' }),
  notes: [],
  work: [
    {
      title: 'At the saw',
      lead: 'First take 6 off each edge of every sheet.',
      caution: 'Saw off at the wall before you set it.',
      tables: [
        {
          heading: 'Birch plywood, 18: 2 fence settings',
          columns: ['Fence', 'Cuts'],
          rows: [
            {
              figure: '584',
              lines: ['Sheet 1, lengthwise: from 2428 × 1208 → A', 'Sheet 1, across: from 584 × 402'],
            },
            { figure: '402', lines: ['Sheet 2, across: from 1208 × 584 → E, F'] },
          ],
        },
      ],
    },
  ],
  materials: [
    {
      name: 'Birch plywood',
      thicknessMm: 18,
      rows: [
        { mark: 'A', name: 'Bottom', quantity: 1, lengthMm: 900, widthMm: 584, note: 'grain along length' },
        { mark: 'C', name: 'Top', quantity: 1, lengthMm: 900, widthMm: 322, note: 'grain along length' },
        {
          mark: 'D',
          name: 'Baffle',
          quantity: 1,
          lengthMm: 900,
          widthMm: 425,
          note: 'bevel 18.9° both long edges',
        },
        { mark: 'E', name: 'Right end', quantity: 1, lengthMm: 584, widthMm: 402, note: '' },
        { mark: 'F', name: 'Left end', quantity: 1, lengthMm: 584, widthMm: 402, note: '' },
        {
          mark: 'G1',
          name: 'Brace',
          quantity: 2,
          lengthMm: 438.2,
          widthMm: 60,
          note: 'round the edges over',
        },
      ],
      maps: [SHEET],
    },
  ],
};

export const SURVEY_SHEET: SurveySheetInput = {
  paper: 'A4',
  language: 'en-GB',
  titleBlock: { ...TITLE_BLOCK, sheet: '02 Survey' },
  heading: 'Survey, cargo space with seats up',
  views: [{ kind: 'section', cavity: SURVEY }],
  rows: [
    { letter: 'A', what: 'Floor, seat back to sill', how: 'on the floor, along the centre line' },
    { letter: 'B', what: 'Height at the seat back', how: 'plumb, from the floor to the seat’s top edge' },
    { letter: 'C', what: 'Opening, square to the way in', how: 'from the sill lip to the lid seal' },
    { letter: 'D', what: 'Roof, flat part', how: '' },
    { letter: 'E', what: 'Height at mid depth', how: 'plumb, under the parcel shelf' },
  ],
};

export const BOX_SHEET: DrawingSheet = {
  paper: 'A3',
  orientation: 'landscape',
  heading: 'Box and dry fit',
  titleBlock: TITLE_BLOCK,
  notes: ['Tilt the nose up 13°, draw it back. 6.2 mm to spare at the seat back.'],
  caution: "Planning aid only. Follow the makers' instructions and local law.",
  draw: (room) => cavitySection(CAVITY, { ...room, textPt: 14, scale: 'standard' }),
};
