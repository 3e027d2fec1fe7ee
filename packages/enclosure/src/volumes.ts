// Volume bookkeeping: gross inside, every deduction by name, net. Nothing is counted twice: braces end at the inside
// doubler, strips end at the braces, and holes belong to the panels, not to the air.
import type { BoxDesign, BoxResult, Deduction } from '@gusset/contracts/enclosure';
import type { Board } from './board.ts';
import type { BraceLayout } from './bracing.ts';
import { type Carcass, recessMm3 } from './carcass.ts';
import type { PlacedBlock } from './corner-blocks.ts';
import type { DividerLayout } from './divider.ts';
import type { DriverLayout } from './driver-layout.ts';
import { type Cuts, outlineAreaMm2 } from './openings.ts';
import { polygonAreaMm2 } from './plane.ts';
import type { LaidPort } from './port-types.ts';
import { roundedOff } from './round-over.ts';
import type { ShellBoards } from './shell-boards.ts';

export type BoxVolumes = BoxResult['volumes'];

export const MM3_PER_LITRE = 1e6;

type Bodies = {
  readonly design: BoxDesign;
  readonly carcass: Carcass;
  readonly divider: DividerLayout | null;
  readonly shell: ShellBoards;
  readonly drivers: DriverLayout | null;
  readonly braces: BraceLayout;
  readonly blocks: readonly PlacedBlock[];
  readonly ports: readonly LaidPort[];
  readonly cuts: Cuts;
};

const litresOf = (mm3: readonly number[]) => mm3.reduce((sum, part) => sum + part, 0) / MM3_PER_LITRE;

const blanks = (boards: readonly Board[]) => litresOf(boards.map((board) => board.blankMm3));

const computed = (code: Deduction['code'], count: number, litres: number): Deduction[] =>
  count === 0 ? [] : [{ code, label: null, count, litres, source: 'computed' }];

function driverDeduction({ drivers }: Bodies): Deduction[] {
  if (drivers === null) return [];
  const { count } = drivers.drivers;
  const each = drivers.body.displacementLitres;
  const source = each === null ? 'missing' : 'maker';
  return [{ code: 'driver', label: null, count, litres: count * (each ?? 0), source }];
}

function braceDeduction({ braces }: Bodies): Deduction[] {
  const litres = litresOf(
    braces.frames.map(
      ({ board, removed }) => board.blankMm3 - removed.reduce((sum, { amount }) => sum + amount, 0),
    ),
  );
  return computed('brace', braces.placesMm.length, litres);
}

/** Channel and panels of each port, in the order of the design. */
function portDeductions({ ports }: Bodies): Deduction[] {
  return ports.map(({ placed }) => ({
    code: 'port',
    label: ports.length === 1 ? null : `Port ${placed.number}`,
    count: placed.count,
    litres: placed.displacedLitres,
    source: 'computed',
  }));
}

function dividerDeduction({ divider }: Bodies): Deduction[] {
  return divider === null ? [] : computed('divider', 1, blanks([divider.board]));
}

function terminalDeduction({ design }: Bodies): Deduction[] {
  const cup = design.terminalCup;
  if (cup === null) return [];
  const stated = cup.displacementLitres;
  const cylinder = (outlineAreaMm2(cup.cutout) * cup.insideDepthMm) / MM3_PER_LITRE;
  const source = stated === null ? 'computed' : 'maker';
  return [{ code: 'terminal-cup', label: null, count: 1, litres: stated ?? cylinder, source }];
}

/** Air in the drivers' cut-outs, from the seat to the innermost wood; recesses lie in front of the seat. */
function cutoutAirLitres({ cuts }: Bodies): number {
  const removed = [...cuts.removed.values()].flat();
  return litresOf(removed.filter(({ kind }) => kind === 'cut-out').map(({ amount }) => amount));
}

function typedDeductions({ design }: Bodies): Deduction[] {
  const parts = design.fittedParts.map(
    ({ label, litres }): Deduction => ({ code: 'fitted-part', label, count: 1, litres, source: 'typed' }),
  );
  const { sealantLitres } = design;
  return sealantLitres === 0
    ? parts
    : [...parts, { code: 'sealant', label: null, count: 1, litres: sealantLitres, source: 'typed' }];
}

export function boxVolumes(bodies: Bodies): BoxVolumes {
  const { design, carcass, shell, blocks } = bodies;
  const airLitres = cutoutAirLitres(bodies);
  const deductions: Deduction[] = [
    ...driverDeduction(bodies),
    ...portDeductions(bodies),
    ...computed('inside-doubler', shell.insideDoublers.length, blanks(shell.insideDoublers)),
    ...braceDeduction(bodies),
    ...dividerDeduction(bodies),
    ...computed(
      'corner-block',
      blocks.length,
      blocks.reduce((sum, block) => sum + block.litres, 0),
    ),
    ...terminalDeduction(bodies),
    ...typedDeductions(bodies),
    ...(design.countCutoutAir ? computed('cutout-air', design.drivers?.count ?? 0, -airLitres) : []),
  ];
  const deductedLitres = deductions.reduce((sum, { litres }) => sum + litres, 0);
  const grossLitres = (polygonAreaMm2(carcass.inner) * carcass.innerWidthMm) / MM3_PER_LITRE;
  const netLitres = grossLitres - deductedLitres;
  const target = design.targetNetLitres;
  return {
    outsideLitres: (polygonAreaMm2(carcass.wood) * carcass.widthMm) / MM3_PER_LITRE,
    shellLitres: blanks([...shell.walls, ...shell.sides, ...shell.outsideDoublers]),
    grossLitres,
    deductions,
    deductedLitres,
    netLitres,
    targetNetLitres: target,
    overTargetLitres: target === null ? null : netLitres - target,
    cutoutAirLitres: airLitres,
    ...(carcass.setBackMm === 0 ? {} : { recessLitres: litresOf([recessMm3(carcass)]) }),
    ...(design.roundOver === null
      ? {}
      : { roundedOffLitres: litresOf(roundedOff(design, carcass).map(({ amount }) => amount)) }),
  };
}
