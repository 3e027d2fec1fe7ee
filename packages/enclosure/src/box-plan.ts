// A design laid out: every body in its place, every volume known. What `buildBox` describes and what the search for
// a volume repeats.
import { type BoxDesign, type BoxFace, finishSchema } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import type { Board } from './board.ts';
import { type BraceLayout, layOutBraces } from './bracing.ts';
import { type Carcass, layOutCarcass } from './carcass.ts';
import { layOutCornerBlocks, type PlacedBlock } from './corner-blocks.ts';
import { type DividerLayout, framesOf, layOutDivider, mountInDivider } from './divider.ts';
import { type DriverLayout, layOutDrivers } from './driver-layout.ts';
import { refuseFigures } from './figure-ranges.ts';
import { NET_MIN_LITRES } from './limits.ts';
import {
  type Cuts,
  cutOpenings,
  driverOpenings,
  type Opening,
  terminalOpening,
  tubeOpenings,
} from './openings.ts';
import type { LaidPort } from './port-types.ts';
import { braceKeepOuts, layOutPorts, layOutSlots } from './ports.ts';
import { refuseRoundOver } from './round-over.ts';
import { refuseDrivers, refuseRabbets, refuseSetBack, refuseShape } from './shape-rules.ts';
import { boardsBehind, refuseFeather, type ShellBoards, shellBoards } from './shell-boards.ts';
import { layOutTerminal, type PlacedTerminal } from './terminal-place.ts';
import { tubeHoleDiaMm } from './tube-port.ts';
import { type BoxVolumes, boxVolumes } from './volumes.ts';

export type BoxPlan = {
  readonly design: BoxDesign;
  readonly carcass: Carcass;
  readonly divider: DividerLayout | null;
  /** The box that the drivers see: the carcass, or the chamber whose baffle the divider is. */
  readonly mount: Carcass;
  readonly shell: ShellBoards;
  readonly drivers: DriverLayout | null;
  readonly braces: BraceLayout;
  readonly blocks: readonly PlacedBlock[];
  readonly terminal: PlacedTerminal | null;
  readonly ports: readonly LaidPort[];
  readonly cuts: Cuts;
  readonly volumes: BoxVolumes;
};

/** Every opening of the box, face by face: drivers first, then the terminal, then pipes. */
function cutAll(shell: ShellBoards, all: readonly FaceOpenings[]): Cuts {
  const groups = [...new Set(all.map(({ face }) => face))];
  const cuts = groups.map((face) =>
    cutOpenings(
      typeof face === 'object' ? [face] : boardsBehind(shell, face),
      all.filter((group) => group.face === face).flatMap(({ openings }) => openings),
    ),
  );
  return {
    holes: new Map(cuts.flatMap(({ holes }) => [...holes])),
    removed: new Map(cuts.flatMap(({ removed }) => [...removed])),
    uncut: cuts.flatMap(({ uncut }) => uncut),
  };
}

type Mounted = Pick<BoxPlan, 'carcass' | 'mount' | 'divider' | 'drivers'>;

function driverCuts({ carcass, mount, divider, drivers }: Mounted): FaceOpenings[] {
  const openings = drivers === null ? [] : driverOpenings(drivers);
  const face = divider === null || mount === carcass ? carcass.baffle.face : divider.board;
  return [{ face, openings }];
}

/** Nothing lies on the wood inside. */
const NO_FINISH = finishSchema.parse({});

/** Drivers in the baffle or in the divider, and the box that they see. */
function mountOf(
  design: BoxDesign,
  carcass: Carcass,
  divider: DividerLayout | null,
  slots: readonly LaidPort[],
): { readonly mount: Carcass; readonly drivers: DriverLayout | null } {
  const chamber = design.divider?.magnets ?? 'far';
  const section = divider?.section ?? null;
  if (section === null || design.divider?.drivers !== 'divider') {
    return { mount: carcass, drivers: layOutDrivers(design, carcass, { slots, divider, chamber }) };
  }
  const mount = mountInDivider(carcass, section, chamber);
  const inside: BoxDesign = { ...design, finish: NO_FINISH };
  return { mount, drivers: layOutDrivers(inside, mount, { slots: [], divider: null, chamber }) };
}

/** Through all boards of a face, or through one board inside. */
type FaceOpenings = { readonly face: BoxFace | Board; readonly openings: readonly Opening[] };

function terminalOpenings(terminal: PlacedTerminal | null): FaceOpenings[] {
  if (terminal === null) return [];
  const { cup, centreMm } = terminal;
  return [{ face: cup.face, openings: [terminalOpening(cup, centreMm)] }];
}

function portOpenings({ ports: designed }: BoxDesign, ports: readonly LaidPort[]): FaceOpenings[] {
  return ports.flatMap((port) => {
    const design = designed[port.placed.number - 1];
    if (design === undefined || design.kind !== 'tube') return [];
    return [{ face: design.face, openings: tubeOpenings(port, tubeHoleDiaMm(design)) }];
  });
}

/** The engine's door and everything behind it that may refuse. */
export function planBox(design: BoxDesign): BoxPlan | Refusal {
  const early =
    refuseFigures(design) ??
    refuseShape(design) ??
    refuseRabbets(design) ??
    refuseSetBack(design) ??
    refuseDrivers(design);
  if (early !== null) return early;
  const carcass = layOutCarcass(design);
  if (isRefusal(carcass)) return carcass;
  const round = refuseRoundOver(design, carcass);
  if (round !== null) return round;
  const slots = layOutSlots(design, carcass);
  if (isRefusal(slots)) return slots;
  const divider = layOutDivider(design, carcass);
  if (isRefusal(divider)) return divider;
  const { mount, drivers } = mountOf(design, carcass, divider, slots.slots);
  const braces = layOutBraces(design, carcass, drivers, {
    frames: framesOf(divider, slots.frame),
    stretches: braceKeepOuts(design, carcass, slots),
    standing: divider === null || divider.stretch === null ? [] : [divider.stretch],
  });
  if (isRefusal(braces)) return braces;
  const ports = layOutPorts(design, carcass, slots, {
    drivers: mount === carcass ? drivers : null,
    braces,
  });
  if (isRefusal(ports)) return ports;
  const blocks = layOutCornerBlocks(design, carcass, braces, { ports, divider });
  if (isRefusal(blocks)) return blocks;
  const terminal = layOutTerminal(design, carcass, braces);
  if (isRefusal(terminal)) return terminal;
  const shell = shellBoards(design, carcass, slots.mouths);
  const feather = refuseFeather(shell);
  if (feather !== null) return feather;
  const cuts = cutAll(shell, [
    ...driverCuts({ carcass, mount, divider, drivers }),
    ...terminalOpenings(terminal),
    ...portOpenings(design, ports),
  ]);
  const volumes = boxVolumes({ design, carcass, divider, shell, drivers, braces, blocks, ports, cuts });
  return (
    refuseNoNet(volumes) ?? {
      design,
      carcass,
      divider,
      mount,
      shell,
      drivers,
      braces,
      blocks,
      terminal,
      ports,
      cuts,
      volumes,
    }
  );
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
