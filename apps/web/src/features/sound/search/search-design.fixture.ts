import type { FoundDesign } from './search-words.ts';

/** One vented design, for tests. */
export const FOUND: FoundDesign = {
  key: 'quince/2/vented/0007',
  driverId: '0192f0c4-0000-7000-8000-000000000001',
  driverName: 'Quince Q-12',
  inStock: 3,
  kind: 'vented',
  count: 2,
  seriesPerString: 2,
  coilWiring: 'parallel',
  loadOhm: 4,
  watts: 450,
  enclosure: {
    kind: 'vented',
    chamber: { netLitres: 62.4, fillFactor: 1, ql: 15, qa: null },
    port: {
      mouth: { shape: 'round', diameterMm: 142 },
      count: 1,
      outerEnd: { kind: 'flanged', walls: 0, flareRadiusMm: 0 },
      innerEnd: { kind: 'free', walls: 0, flareRadiusMm: 0 },
      sizing: { by: 'tuning', tuningHz: 31.5 },
      qp: null,
    },
  },
  netLitres: 62.4,
  costMinor: 31_600,
  tuningHz: 31.5,
  port: { diameterMm: 142, lengthMm: 540.2 },
  lowCornerHz: 26.4,
  outputDb: 118.2,
  deviationDb: 1.3,
};
