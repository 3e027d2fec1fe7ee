// The same box for the other side of the vehicle: left and right change places.
import type { BoxDesign, BoxFace } from '@gusset/contracts/enclosure';

const otherSide = (face: BoxFace): BoxFace => {
  if (face === 'left') return 'right';
  return face === 'right' ? 'left' : face;
};

const negated = (mm: number) => (mm === 0 ? 0 : -mm); // -0 would make a mirrored design differ from itself

function mirrorDrivers({ drivers }: BoxDesign): BoxDesign['drivers'] {
  if (drivers === null || drivers.positions === null) return drivers;
  const positions = drivers.positions.map(({ zMm, upMm }) => ({ zMm: negated(zMm), upMm }));
  return { ...drivers, positions };
}

function mirrorBracing({ bracing }: BoxDesign): BoxDesign['bracing'] {
  switch (bracing.kind) {
    case 'none':
      return bracing;
    case 'placed':
      return { ...bracing, zMm: bracing.zMm.map(negated) };
    case 'suggested':
    case 'count':
      return { ...bracing, offCentre: bracing.offCentre === 'left' ? 'right' : 'left' };
  }
}

function mirrorTerminal({ terminalCup: cup }: BoxDesign): BoxDesign['terminalCup'] {
  if (cup === null) return null;
  const face = otherSide(cup.face);
  if (cup.at === null || face !== cup.face) return { ...cup, face };
  return { ...cup, at: { ...cup.at, acrossMm: negated(cup.at.acrossMm) } };
}

function mirrorPorts({ ports }: BoxDesign): BoxDesign['ports'] {
  return ports.map((port) => {
    if (port.kind === 'slot') {
      const acrossMm = port.acrossMm === null ? null : negated(port.acrossMm);
      return { ...port, along: otherSide(port.along), acrossMm };
    }
    const face = otherSide(port.face);
    if (port.at === null || face !== port.face) return { ...port, face };
    return { ...port, at: port.at.map(({ acrossMm, upMm }) => ({ acrossMm: negated(acrossMm), upMm })) };
  });
}

function mirrorDivider({ divider }: BoxDesign): BoxDesign['divider'] {
  return divider === null ? null : { ...divider, parallelTo: otherSide(divider.parallelTo) };
}

/** Mirrors a design across the centre line; twice gives the design back. Volumes and masses don't change. */
export function mirrorDesign(design: BoxDesign): BoxDesign {
  return {
    ...design,
    drivers: mirrorDrivers(design),
    bracing: mirrorBracing(design),
    terminalCup: mirrorTerminal(design),
    ports: mirrorPorts(design),
    divider: mirrorDivider(design),
    finish: { ...design.finish, leftMm: design.finish.rightMm, rightMm: design.finish.leftMm },
  };
}
