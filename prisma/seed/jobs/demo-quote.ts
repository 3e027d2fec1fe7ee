// What became of a job's quote: when it went out, what was said about it, how it was answered.
import type { DaysAgo } from './demo-job.ts';

export type DemoMessage = {
  readonly side: 'customer' | 'shop';
  readonly daysAgo: DaysAgo;
  readonly time: string;
  readonly text: string;
};

export type DemoQuote = {
  readonly sentDaysAgo: DaysAgo;
  /** When the customer first opened it; left out = not yet. */
  readonly seenDaysAgo?: DaysAgo;
  readonly messages?: readonly DemoMessage[];
  readonly answer?: { readonly kind: 'approved' | 'declined'; readonly daysAgo: DaysAgo };
};

export const QUOTES: Readonly<Record<string, DemoQuote>> = {
  'show car': {
    sentDaysAgo: 63,
    seenDaysAgo: 63,
    answer: { kind: 'approved', daysAgo: 62 },
  },
  'estate bass': {
    sentDaysAgo: 52,
    seenDaysAgo: 52,
    messages: [
      {
        side: 'customer',
        daysAgo: 52,
        time: '19:40',
        text: 'Two minutes, honestly? The dog does not wait.',
      },
      {
        side: 'shop',
        daysAgo: 51,
        time: '08:20',
        text: 'One connector and two wing nuts. Come by and try it on the mock-up before we glue anything.',
      },
    ],
    answer: { kind: 'approved', daysAgo: 51 },
  },
  'coupe bass': {
    sentDaysAgo: 29,
    seenDaysAgo: 28,
    messages: [
      {
        side: 'customer',
        daysAgo: 26,
        time: '18:05',
        text: 'Lovely drawing, but that is nearly what the car is worth. I will sleep on a new car instead.',
      },
    ],
    answer: { kind: 'declined', daysAgo: 26 },
  },
  'behind the seat': {
    sentDaysAgo: 6,
    seenDaysAgo: 6,
    messages: [
      {
        side: 'customer',
        daysAgo: 5,
        time: '12:10',
        text: 'What joint is that at the top edge? If it is a butt joint I would rather have a rebate.',
      },
      {
        side: 'shop',
        daysAgo: 5,
        time: '15:30',
        text: 'Butt joint, glued and screwed, with a corner block along it. You can see it before the coating goes on.',
      },
    ],
    answer: { kind: 'approved', daysAgo: 4 },
  },
  'hatch ten': {
    sentDaysAgo: 3,
    seenDaysAgo: 3,
    answer: { kind: 'approved', daysAgo: 2 },
  },
  'saloon pair': {
    sentDaysAgo: 6,
    seenDaysAgo: 5,
    messages: [
      {
        side: 'customer',
        daysAgo: 5,
        time: '21:15',
        text: 'Can the second tuning be in the evening? I rehearse during the day.',
      },
      { side: 'shop', daysAgo: 4, time: '08:45', text: 'Yes. Tuesdays we are here until seven anyway.' },
    ],
    answer: { kind: 'approved', daysAgo: 3 },
  },
  'wedding car': {
    sentDaysAgo: 5,
    seenDaysAgo: 4,
    answer: { kind: 'approved', daysAgo: 2 },
  },
  'electric estate': {
    sentDaysAgo: 11,
    seenDaysAgo: 10,
    messages: [
      {
        side: 'customer',
        daysAgo: 2,
        time: '20:30',
        text: 'Does the amplifier draw anything while the car is parked? It sits at the airport for weeks.',
      },
    ],
  },
  'pram in the boot': { sentDaysAgo: 8, seenDaysAgo: 7 },
};
