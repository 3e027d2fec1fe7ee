// A design laid out: every body in its place, every volume known. What `buildBox` describes and what the search for
// a volume repeats.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type BraceLayout, layOutBraces } from './bracing.ts';
import { type Carcass, layOutCarcass } from './carcass.ts';
import { layOutCornerBlocks, type PlacedBlock } from './corner-blocks.ts';
import { type DriverLayout, layOutDrivers } from './driver-layout.ts';
import { refuseFigures } from './figure-ranges.ts';
import { NET_MIN_LITRES } from './limits.ts';
import { type Cuts, cutOpenings, driverOpenings, terminalOpening } from './openings.ts';
import { refuseDrivers, refuseShape } from './shape-rules.ts';
import { boardsBehind, refuseFeather, type ShellBoards, shellBoards } from './shell-boards.ts';
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
  readonly cuts: Cuts;
  readonly volumes: BoxVolumes;
};

/** Every opening of the box: those of the baffle first, then the terminal's where it sits on another face. */
function cutAll(
  shell: ShellBoards,
  carcass: Carcass,
  drivers: DriverLayout | null,
  terminal: PlacedTerminal | null,
): Cuts {
  const baffleFace = carcass.baffle.face;
  const ofDrivers = drivers === null ? [] : driverOpenings(drivers);
  if (terminal === null) return cutOpenings(boardsBehind(shell, baffleFace), ofDrivers);
  const { cup, centreMm } = terminal;
  const ofTerminal = [terminalOpening(cup, centreMm)];
  if (cup.face === baffleFace) {
    return cutOpenings(boardsBehind(shell, baffleFace), [...ofDrivers, ...ofTerminal]);
  }
  const inBaffle = cutOpenings(boardsBehind(shell, baffleFace), ofDrivers);
  const elsewhere = cutOpenings(boardsBehind(shell, cup.face), ofTerminal);
  return {
    holes: new Map([...inBaffle.holes, ...elsewhere.holes]),
    removed: new Map([...inBaffle.removed, ...elsewhere.removed]),
    uncut: [...inBaffle.uncut, ...elsewhere.uncut],
  };
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
  const feather = refuseFeather(shell);
  if (feather !== null) return feather;
  const cuts = cutAll(shell, carcass, drivers, terminal);
  const volumes = boxVolumes({ design, carcass, shell, drivers, braces, blocks, cuts });
  return refuseNoNet(volumes) ?? { design, carcass, shell, drivers, braces, blocks, terminal, cuts, volumes };
}

function refuseNoNet({ netLitres, grossLitres, deductedLitres }: BoxVolumes): Refusal | null {
  if (netLitres >= NET_MIN_LITRES) return null;
  const taken = Number(deductedLitres.toFixed(2));
  const inside = Number(grossLitres.toFixed(2));
  return refuse('shape', {
    allowed: `more than ${taken} L inside`,
    got: inside,
    why: `what stands inside takes ${taken} L of ${inside} L`,
  });
}
