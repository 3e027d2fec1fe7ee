// Invented drivers that the golden cases and the tests share.

export const quince10 = {
  fsHz: 29.5,
  qms: 4.6,
  qes: 0.52,
  vasLitres: 48,
  sdCm2: 340,
  reOhm: 3.6,
  leMh: 0,
  l2Mh: null,
  r2Ohm: null,
  coils: 1,
  xmaxMm: 11,
  peWatts: 300,
  displacementLitres: 2.1,
} as const;

export const medlar12 = {
  ...quince10,
  fsHz: 27,
  qms: 6,
  qes: 0.42,
  vasLitres: 70,
  sdCm2: 500,
  reOhm: 3.4,
  leMh: 1.5,
  xmaxMm: 14,
  peWatts: 500,
} as const;

/** Two coils with lossy inductance. */
export const medlar12Dual = { ...medlar12, reOhm: 1.9, leMh: 0.9, l2Mh: 1.7, r2Ohm: 6.5, coils: 2 } as const;
