// Filters before the amplifier and the cabin behind the sound, as resistors, coils and capacitors.
import type { Draft, System } from './netlist-parts.ts';

/** Every flow to the outside into one ohm; the cabin shelf as 1 + a x (resistor) + b x (capacitor) of a series RLC. */
export function writeSum(draft: Draft, system: System, c: number): void {
  draft.lines.push(...draft.outside, 'Rflows flows 0 1');
  const { cabin } = system;
  if (cabin === null || cabin.kind === 'curve') {
    draft.lines.push('Eheard heard 0 flows 0 1');
    return;
  }
  const upper = (2 * Math.PI * c) / (2 * cabin.longestM);
  const lower = 2 * Math.PI * cabin.lowerHz;
  const onResistor = (upper / cabin.upperQ - lower / cabin.lowerQ) / (lower / cabin.lowerQ);
  const onCapacitor = (upper ** 2 - lower ** 2) / lower ** 2;
  draft.lines.push(
    'Ecab cab1 0 flows 0 1',
    'Lcab cab1 cab2 1',
    `Rcab cab2 cab3 ${lower / cabin.lowerQ}`,
    `Ccab cab3 0 ${1 / lower ** 2}`,
    'Eheard1 heard heard1 flows 0 1',
    `Eheard2 heard1 heard2 cab2 cab3 ${onResistor}`,
    `Eheard3 heard2 0 cab3 0 ${onCapacitor}`,
  );
}

// Sections from printed tables: factor on the corner of a low-pass, and Q.
const BUTTERWORTH_SECTIONS: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  2: [[1, Math.SQRT1_2]],
  3: [[1, 1]],
  4: [
    [1, 0.5411961],
    [1, 1.30656296],
  ],
};
/** One of each pair of roots of s² + 3s + 3 and s⁴ + 10s³ + 45s² + 105s + 105, and where those filters stand at -3 dB. */
const BESSEL_ROOTS: Readonly<
  Record<number, { corner: number; roots: readonly (readonly [number, number])[] }>
> = {
  2: { corner: 1.36165, roots: [[1.5, 0.8660254]] },
  4: {
    corner: 2.11392,
    roots: [
      [2.8962106, 0.8672341],
      [2.1037894, 2.657418],
    ],
  },
};

function besselSections(order: number): (readonly [number, number])[] | undefined {
  const table = BESSEL_ROOTS[order];
  return table?.roots.map(([re, im]) => [Math.hypot(re, im) / table.corner, Math.hypot(re, im) / (2 * re)]);
}

export function writeFilters(draft: Draft, system: System): void {
  draft.lines.push(`Vg g0 0 dc 0 ac ${system.source.voltageVrms}`);
  let stage = 0;
  const next = (parts: (input: string, output: string, tag: string) => string[]) => {
    const [input, output] = [`g${stage}`, `h${stage}`];
    draft.lines.push(...parts(input, output, `x${stage}`), `Eb${stage} g${stage + 1} 0 ${output} 0 1`);
    stage++;
  };
  for (const filter of system.filters) {
    if (filter.kind === 'peaking') {
      next(cutSection(filter));
      continue;
    }
    const isHigh = filter.kind === 'highpass';
    const linkwitz = filter.alignment === 'linkwitz-riley';
    const order = linkwitz ? filter.order / 2 : filter.order;
    const sections = filter.alignment === 'bessel' ? besselSections(order) : BUTTERWORTH_SECTIONS[order];
    if (sections === undefined) throw new Error(`no table for order ${order}`);
    for (const [factor, q] of linkwitz ? [...sections, ...sections] : sections) {
      next(passSection(isHigh, 2 * Math.PI * filter.cornerHz * (isHigh ? 1 / factor : factor), q));
    }
    if (order % 2 === 1) next(firstOrder(isHigh, 2 * Math.PI * filter.cornerHz));
  }
  draft.lines.push(`Edrive drive 0 g${stage} 0 1`);
}

/** Series arm and shunt arm: L and C change places between low-pass and high-pass; R across the shunt. */
function passSection(isHigh: boolean, omega: number, q: number) {
  const [l, c] = [1 / omega, 1 / omega];
  return (input: string, output: string, tag: string) => [
    isHigh ? `C${tag} ${input} ${output} ${c}` : `L${tag} ${input} ${output} ${l}`,
    isHigh ? `L${tag} ${output} 0 ${l}` : `C${tag} ${output} 0 ${c}`,
    `R${tag} ${output} 0 ${q}`,
  ];
}

function firstOrder(isHigh: boolean, omega: number) {
  return (input: string, output: string, tag: string) =>
    isHigh
      ? [`C${tag} ${input} ${output} ${1 / omega}`, `R${tag} ${output} 0 1`]
      : [`R${tag} ${input} ${output} 1`, `C${tag} ${output} 0 ${1 / omega}`];
}

/** A cut as a divider: resistor above, resistor and series resonance below. */
function cutSection({ centreHz, gainDb, q }: { centreHz: number; gainDb: number; q: number }) {
  const omega = 2 * Math.PI * centreHz;
  const a = 10 ** (gainDb / 40);
  const below = (a / q) * omega;
  const above = omega / (a * q) - below;
  return (input: string, output: string, tag: string) => [
    `R${tag}a ${input} ${output} ${above}`,
    `R${tag}b ${output} ${tag}m ${below}`,
    `L${tag} ${tag}m ${tag}n 1`,
    `C${tag} ${tag}n 0 ${1 / omega ** 2}`,
  ];
}
