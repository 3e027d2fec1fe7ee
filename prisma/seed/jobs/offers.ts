// Parts and prices of the demo's jobs, by the job's name.
import { type DemoOffer, type DemoPart, powerAndSignal } from './demo-offer.ts';

const ANCHORS: DemoPart = { code: 'BRK-ANC', kind: 'part', group: 'hardware', quantity: 1, unit: 'pack' };
const LINING: DemoPart = { code: 'LIN-25', kind: 'material', group: 'hardware', quantity: 1.5, unit: 'm2' };
const TAKE_OFF: DemoPart = { code: 'OEM-HL', kind: 'part', group: 'signal', quantity: 1, unit: 'each' };
const grille = (code: string, quantity = 1): DemoPart => ({
  code,
  kind: 'part',
  group: 'hardware',
  quantity,
  unit: 'each',
});

/** Standard tasks that were done, unpaid, before there was a price. */
const BEFORE_THE_QUOTE = ['consult', 'measure', 'design'];

const NO_HIGH_VOLTAGE = 'Anything on the vehicle’s high-voltage system';
const NO_OLD_WIRING = 'Finding and mending faults of earlier wiring';

export const OFFERS: Readonly<Record<string, DemoOffer>> = {
  'show car': {
    cutting: { daysAgo: 66, amplifierBoard: ['620', '340'] },
    parts: {
      daysAgo: 65,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-1000-1',
          cable: 'CBL-35R',
          metres: 6,
          fuse: 'FH-100',
          loudspeakerMetres: 4,
        }),
        { code: 'BN-68', kind: 'part', group: 'amplifier', quantity: 1, unit: 'each' },
        grille('GRL-12', 2),
        ANCHORS,
      ],
      loans: [{ line: 'driver', source: 'sponsor', backIn: 5 }],
      settledBriefKeys: ['loan-drivers'],
    },
    price: {
      daysAgo: 64,
      finish: 'coating',
      without: BEFORE_THE_QUOTE,
      minutes: { tune: 300, rout: 240, 'amplifier-board': 240 },
      scope:
        'Two twelve-inch subwoofers in a birch box under the floor line, amplifier and processor on a board behind it, tuned with the doors shut and open. The drivers are on loan from Medlar.',
      exclusions: [NO_HIGH_VOLTAGE, 'Removal after the loan'],
      discount: { by: 'percent', rateBasisPoints: 1_500, on: ['labour'] },
    },
  },
  'estate bass': {
    cutting: { daysAgo: 54 },
    parts: {
      daysAgo: 54,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-500-1',
          cable: 'CBL-20R',
          metres: 6,
          fuse: 'FH-60',
          loudspeakerMetres: 3,
        }),
        TAKE_OFF,
        LINING,
      ],
    },
    price: {
      daysAgo: 53,
      finish: 'carpet',
      without: BEFORE_THE_QUOTE,
      scope:
        'A twelve-inch bass box in charcoal carpet against the seat back, lifted out in two minutes, with its amplifier under the seat. Set up to your music before you take the car.',
      exclusions: [NO_HIGH_VOLTAGE, NO_OLD_WIRING],
    },
  },
  'coupe bass': {
    cutting: { daysAgo: 30 },
    parts: {
      daysAgo: 30,
      byHand: powerAndSignal({
        amplifier: 'TS-500-1',
        cable: 'CBL-20R',
        metres: 5,
        fuse: 'FH-60',
        loudspeakerMetres: 3,
      }),
    },
    price: {
      daysAgo: 30,
      finish: 'carpet',
      without: [...BEFORE_THE_QUOTE, 'mock-up'],
      scope: 'A small bass box in black carpet in the left corner of the boot, with a compact amplifier.',
      exclusions: [NO_OLD_WIRING],
    },
  },
  'behind the seat': {
    cutting: { daysAgo: 8, amplifierBoard: ['420', '280'] },
    parts: {
      daysAgo: 8,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-500-1',
          cable: 'CBL-20R',
          metres: 5,
          fuse: 'FH-60',
          loudspeakerMetres: 4,
        }),
        TAKE_OFF,
        ANCHORS,
      ],
    },
    price: {
      daysAgo: 7,
      finish: 'coating',
      without: BEFORE_THE_QUOTE,
      minutes: { rout: 180, 'install-box': 100 },
      scope:
        'Two shallow tens in a birch wedge behind the rear seat, textured coating, amplifier on the cab wall. The seat latches, and the child-seat tether on the right stays as it is.',
      exclusions: [NO_OLD_WIRING, 'Moving the tool rack'],
    },
  },
  'hatch ten': {
    cutting: { daysAgo: 5 },
    parts: {
      daysAgo: 4,
      byHand: [
        ...powerAndSignal({
          amplifier: 'BN-2-80',
          cable: 'CBL-20R',
          metres: 5,
          fuse: 'FH-60',
          loudspeakerMetres: 3,
        }),
        grille('GRL-10'),
        LINING,
      ],
    },
    price: {
      daysAgo: 4,
      finish: 'carpet',
      without: BEFORE_THE_QUOTE,
      scope:
        'One ten-inch subwoofer in a wedge along the seat back, left half of the boot, charcoal carpet. Jack and wheel brace stay where they are.',
      exclusions: [NO_OLD_WIRING],
    },
  },
  'saloon pair': {
    cutting: { daysAgo: 9, amplifierBoard: ['560', '320'] },
    parts: {
      daysAgo: 8,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-1000-1',
          cable: 'CBL-35R',
          metres: 6,
          fuse: 'FH-100',
          loudspeakerMetres: 4,
        }),
        { code: 'TS-46', kind: 'part', group: 'amplifier', quantity: 1, unit: 'each' },
        { ...LINING, quantity: 3 },
      ],
      loans: [{ line: 'brief:trial-tweeters', source: 'sponsor', backIn: 8 }],
    },
    price: {
      daysAgo: 7,
      finish: 'carpet',
      without: BEFORE_THE_QUOTE,
      minutes: { tune: 210 },
      scope:
        'Two tens in one half-filled box that fires through the ski hatch, processor and amplifier under the shelf, tuned on two visits: the second after four weeks is part of the price.',
      exclusions: [NO_OLD_WIRING],
      extraLines: [
        {
          key: 'second-tuning',
          kind: 'other',
          description: 'Second tuning visit after four weeks',
          quantity: 1,
          unitCostMinor: 4_200,
          unitPriceMinor: 9_000,
        },
      ],
    },
  },
  'wedding car': {
    cutting: { daysAgo: 7, amplifierBoard: ['540', '300'] },
    parts: {
      daysAgo: 6,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-1000-1',
          source: 'customer',
          cable: 'CBL-35R',
          metres: 6,
          fuse: 'FH-100',
          loudspeakerMetres: 3,
        }),
        ANCHORS,
      ],
    },
    price: {
      daysAgo: 6,
      finish: 'coating',
      without: BEFORE_THE_QUOTE,
      minutes: { 'install-box': 120 },
      scope:
        'One fifteen-inch subwoofer in a coated birch wedge, set up for an open boot. Your own amplifier is looked over and fitted.',
      exclusions: [NO_HIGH_VOLTAGE, 'Warranty on the amplifier that you bring'],
    },
  },
  'electric estate': {
    cutting: { daysAgo: 12 },
    parts: {
      daysAgo: 12,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-500-1',
          cable: 'CBL-20R',
          metres: 3,
          fuse: 'FH-60',
          loudspeakerMetres: 2,
        }),
        TAKE_OFF,
        LINING,
      ],
    },
    price: {
      daysAgo: 12,
      finish: 'carpet',
      without: [...BEFORE_THE_QUOTE, 'mock-up'],
      scope:
        'An eight-inch box of light board, under ten kilograms, above the service floor. The service plug behind the left trim stays free.',
      exclusions: [NO_HIGH_VOLTAGE],
    },
  },
  'pram in the boot': {
    cutting: { daysAgo: 10 },
    parts: {
      daysAgo: 10,
      byHand: powerAndSignal({
        amplifier: 'TS-500-1',
        cable: 'CBL-20R',
        metres: 5,
        fuse: 'FH-60',
        loudspeakerMetres: 3,
      }),
    },
    price: {
      daysAgo: 9,
      finish: 'carpet',
      without: [...BEFORE_THE_QUOTE, 'mock-up'],
      scope: 'One eight-inch subwoofer in the left half of the boot. The folded pram stands beside it.',
      exclusions: [NO_OLD_WIRING],
      discount: { by: 'amount', amountMinor: 5_000, on: ['labour'] },
    },
  },
  'rowing estate': {
    cutting: { daysAgo: 7, amplifierBoard: ['380', '260'] },
    parts: {
      daysAgo: 6,
      byHand: [
        ...powerAndSignal({
          amplifier: 'TS-500-1',
          cable: 'CBL-20R',
          metres: 6,
          fuse: 'FH-60',
          loudspeakerMetres: 3,
        }),
        { ...ANCHORS, quantity: 2, note: 'Held against braking with the seats folded' },
        LINING,
      ],
    },
    price: {
      daysAgo: 5,
      finish: 'carpet',
      without: BEFORE_THE_QUOTE,
      scope:
        'One ten-inch subwoofer in the right-hand corner, anchored so that it stays put with the seats folded. The middle third stays free over the whole length.',
      exclusions: [NO_HIGH_VOLTAGE, NO_OLD_WIRING],
    },
  },
};
