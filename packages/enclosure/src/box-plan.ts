// A design laid out: every body in its place, every volume known. What `buildBox` describes and what the search for
// a volume repeats.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type BraceLayout, layOutBraces } from './bracing.ts';
import { type Carcass, layOutCarcass } from './carcass.ts';
import { layOutCornerBlocks, type PlacedBlock } from './corner-blocks.ts';
import { type DriverLayout, layOutDrivers } from './driver-layout.ts';
import { refuseFigures } from './figure-ranges.ts';
import { type Cuts, cutOpenings, driverOpenings, terminalOpening } from './openings.ts';
import { refuseDrivers, refuseShape } from './shape-rules.ts';
import { boardsBehind, type ShellBoards, shellBoards } from './shell-boards.ts';
import { layOutTerminal, type PlacedTerminal } from './terminal-place.ts';
import { type BoxVolumes, boxVolumes } from './volumes.ts';

export type BoxPlan = {
  readonly design: BoxDesign;
  readonly carcass: Carcass;
  readonly shell: ShellBoards;
  readonly drivers: DriverLayout | null;
  readonly braces: BraceLayout;
  readonly blocks: readonly PlacedBlock[];
  readonly terminal: PlacedTerminal | null;
  readonly driverCuts: Cuts;
  readonly terminalCuts: Cuts;
  readonly volumes: BoxVolumes;
};

const NO_CUTS: Cuts = { holes: new Map(), removed: new Map(), offPanel: [] };

function cutForDrivers(shell: ShellBoards, carcass: Carcass, drivers: DriverLayout | null): Cuts {
  if (drivers === null) return NO_CUTS;
  return cutOpenings(boardsBehind(shell, carcass.baffle.face), driverOpenings(drivers));
}

function cutForTerminal(shell: ShellBoards, terminal: PlacedTerminal | null): Cuts {
  if (terminal === null) return NO_CUTS;
  const { cup, centreMm } = terminal;
  return cutOpenings(boardsBehind(shell, cup.face), [terminalOpening(cup, centreMm)]);
}

/** The engine's door and everything behind it that may refuse. */
export function planBox(design: BoxDesign): BoxPlan | Refusal {
  const early = refuseFigures(design) ?? refuseShape(design) ?? refuseDrivers(design);
  if (early !== null) return early;
  const carcass = layOutCarcass(design);
  if (isRefusal(carcass)) return carcass;
  const drivers = layOutDrivers(design, carcass);
  const braces = layOutBraces(design, carcass, drivers);
  if (isRefusal(braces)) return braces;
  const blocks = layOutCornerBlocks(design, carcass, braces);
  if (isRefusal(blocks)) return blocks;
  const terminal = layOutTerminal(design, carcass, braces);
  if (isRefusal(terminal)) return terminal;
  const shell = shellBoards(design, carcass);
  const driverCuts = cutForDrivers(shell, carcass, drivers);
  const terminalCuts = cutForTerminal(shell, terminal);
  const volumes = boxVolumes({ design, carcass, shell, drivers, braces, blocks, driverCuts });
  if (volumes.netLitres <= 0) {
    return refuse('shape', {
      allowed: `more than ${Number(volumes.deductedLitres.toFixed(2))} L inside`,
      got: Number(volumes.grossLitres.toFixed(2)),
      why: `drivers, braces and the rest take ${Number((-volumes.netLitres).toFixed(2))} L more than there is`,
    });
  }
  return { design, carcass, shell, drivers, braces, blocks, terminal, driverCuts, terminalCuts, volumes };
}
