// Charts of an invented box and an invented day in the bays, for tests and for looking at.
import type { LaneChartInput } from '../charts/lane-chart.ts';
import type { CurvePoint, ResponseChartInput } from '../charts/response-chart.ts';

/** Fourth-order high-pass of a vented box tuned to `tuningHz`, level `level` dB well above it. */
const ventedLevel = (tuningHz: number, level: number): CurvePoint[] =>
  Array.from({ length: 161 }, (_, index): CurvePoint => {
    const frequencyHz = 10 * 10 ** (index / 80);
    return [frequencyHz, level - 10 * Math.log10(1 + (tuningHz / frequencyHz) ** 8)];
  });

export const RESPONSE: ResponseChartInput = {
  title: 'Level at one metre',
  description: 'The vented box stays above 88 dB down to 32 Hz; the closed box falls 6 dB lower there.',
  fromHz: 10,
  toHz: 1000,
  unit: 'dB SPL',
  quantity: 'Level, 2.83 V, 1 m',
  axis: { from: 60, to: 105, step: 5 },
  curves: [
    { name: 'vented 74 L', dash: 'solid', tone: 'ink', points: ventedLevel(31, 92) },
    {
      name: 'closed 40 L',
      dash: 'long',
      tone: 'ink',
      points: ventedLevel(46, 91).map(([f, v]): CurvePoint => [f, v + 4 / (1 + (f / 40) ** 2)]),
    },
    { name: 'asked for', dash: 'dots', tone: 'mark', points: ventedLevel(28, 90) },
  ],
  band: {
    name: 'target ±3 dB',
    lower: [
      [30, 87],
      [200, 87],
    ],
    upper: [
      [30, 93],
      [200, 93],
    ],
  },
  limits: [{ value: 101, text: 'thermal limit of the driver', failing: true }],
  zones: [{ fromValue: 101, toValue: null, name: 'too hot', tone: 'pencil' }],
  marks: [{ frequencyHz: 32, text: 'tuned 32 Hz' }],
  assumptions: 'Half space, 20 °C, no cabin, small signals. An estimate: measure before you promise.',
};

export const LANES: LaneChartInput = {
  title: 'Today in the bays',
  description: 'Three bays from 8 to 18 h; Bay 2 waits for a fuse holder from 13 h.',
  fromMinute: 480,
  toMinute: 1080,
  nowMinute: 684,
  clock: '24',
  lanes: [
    {
      name: 'Bay 1',
      caption: 'Merle estate · 2414',
      tasks: [
        {
          key: 't1',
          name: 'Cut panels',
          note: 'Ilves · done 1 h 50',
          fromMinute: 487,
          toMinute: 617,
          state: 'done',
        },
        {
          key: 't2',
          name: 'Dry assemble',
          note: 'Ilves · 0:48 of 2:00',
          fromMinute: 622,
          toMinute: 748,
          state: 'running',
        },
        {
          key: 't3',
          name: 'Glue setting',
          note: 'no hands · until 15:30',
          fromMinute: 752,
          toMinute: 930,
          state: 'setting',
        },
      ],
    },
    {
      name: 'Bay 2',
      caption: 'Orrin van · 2409',
      tasks: [
        {
          key: 't4',
          name: 'Run power cable',
          note: 'Sato · 1:22 of 3:30',
          fromMinute: 528,
          toMinute: 768,
          state: 'running',
        },
        {
          key: 't5',
          name: 'Mount amplifier',
          note: 'waits for part: 80 A fuse holder, due 13:00',
          fromMinute: 780,
          toMinute: 936,
          state: 'held',
        },
        { key: 't6', name: 'Trim', note: 'Bello', fromMinute: 900, toMinute: 960, state: 'planned' },
      ],
    },
    {
      name: 'Finishing',
      caption: 'Tern coupe · 2411',
      tasks: [
        { key: 't7', name: 'Coat 2', note: 'Bello', fromMinute: 724, toMinute: 796, state: 'planned' },
        {
          key: 't8',
          name: 'Coat 2 drying',
          note: 'handle after 18:00',
          fromMinute: 804,
          toMinute: 1100,
          state: 'setting',
        },
      ],
    },
  ],
};
