// In which order a box is glued so that everything inside can be reached until the last panel closes it.
//
// One side lies on the bench and the walls stand on it; what stands inside goes in while the other side is off; the
// carcass is carried into the vehicle before it is closed, because that is the last time it can be altered cheaply.
import type { Adhesive, AssemblyPlan, AssemblyStep } from '@gusset/contracts/cutting';
import type { BoxDesign, BoxResult, PanelBody } from '@gusset/contracts/enclosure';
import { type Refusal, refuse } from '@gusset/units';
import { curingFactor } from './curing-factor.ts';

/** One clamp every 250 mm, the middle of the usual 200 to 300. */
const CLAMP_SPACING_MM = 250;

export type AssemblyQuestion = {
  readonly design: Pick<BoxDesign, 'ports' | 'roundOver'>;
  readonly box: Pick<BoxResult, 'bodies' | 'cornerBlocks' | 'joints' | 'panels'>;
  readonly adhesive: Adhesive;
  /** Of the shop while it sets, °C. */
  readonly temperatureC: number;
};

type Draft = Omit<AssemblyStep, 'order'>;

/** The steps, or a refusal where the glue does not set: field `temperatureC`. */
export function assemblyPlan(question: AssemblyQuestion): AssemblyPlan | Refusal {
  const { design, box, adhesive, temperatureC } = question;
  if (temperatureC < adhesive.coldestC) {
    return refuse('temperatureC', {
      allowed: `${adhesive.coldestC} °C or more`,
      got: temperatureC,
      why: `${adhesive.name} does not set as it should below ${adhesive.coldestC} °C`,
    });
  }
  const factor = curingFactor(temperatureC);
  const { base, closing } = basePanels(design, box.bodies);
  if (base === null || closing === null) {
    return refuse('box', { allowed: 'two sides', got: 0, why: 'the box has no sides to be glued up on' });
  }
  const of = (...roles: readonly PanelBody['role'][]) =>
    box.bodies.filter(({ role }) => roles.includes(role));
  const walls = of('wall', 'baffle');
  const first = walls.filter(({ role, face }) => role === 'wall' && (face === 'bottom' || face === 'back'));
  const inside = of('divider', 'port', 'brace');
  const later = walls.filter((wall) => !first.includes(wall));
  const opened = box.panels.filter(({ holes }) => holes.length > 0).map(({ mark }) => mark);
  const { joints } = box;
  const insideMm = joints.braceSeamMm + (joints.portSeamMm ?? 0) + (joints.dividerSeamMm ?? 0);
  const shellScrews = joints.seams.reduce((sum, { screws }) => sum + screws, 0);
  const glue = (bodies: readonly PanelBody[], standing: readonly PanelBody[]): Draft =>
    glued('glue', bodies, seamsOf(joints.seams, bodies, standing), adhesive, factor);

  const doublers = of('doubler');
  const drafts: Draft[] = [
    ...(opened.length > 0 ? [plain('openings', opened)] : []),
    ...(doublers.length > 0
      ? [glued('laminate', doublers, { lengthMm: 0, screws: 0 }, adhesive, factor)]
      : []),
    plain(
      'dry',
      box.bodies.map(({ mark }) => mark),
    ),
    glue([base, ...first], []),
    ...(inside.length > 0
      ? [glued('glue', inside, { lengthMm: insideMm, screws: joints.screws - shellScrews }, adhesive, factor)]
      : []),
    ...(later.length > 0 ? [glue(later, [base, ...first])] : []),
    plain('strips', []),
    plain('try', []),
    { ...glue([closing], [base, ...walls]), what: 'close' },
    plain('leak', []),
    plain('flush', design.roundOver === null ? [] : walls.map(({ mark }) => mark)),
  ];
  const steps = drafts.map((draft, index): AssemblyStep => ({ ...draft, order: index + 1 }));
  return {
    steps,
    baseMark: base.mark,
    closingMark: closing.mark,
    waitMinutes: steps.reduce((sum, { waitMinutes }) => sum + waitMinutes, 0),
    curingFactor: factor,
  };
}

/** A slot along a side is built on that side: it lies on the bench, and the other one closes the box. */
function basePanels(
  { ports }: AssemblyQuestion['design'],
  bodies: readonly PanelBody[],
): { readonly base: PanelBody | null; readonly closing: PanelBody | null } {
  const isOnRight = ports.some((port) => port.kind === 'slot' && port.along === 'right');
  const isOnLeft = ports.some((port) => port.kind === 'slot' && port.along === 'left');
  const side = (face: 'left' | 'right') =>
    bodies.find((body) => body.role === 'side' && body.face === face) ?? null;
  return isOnRight && !isOnLeft
    ? { base: side('right'), closing: side('left') }
    : { base: side('left'), closing: side('right') };
}

function seamsOf(
  seams: BoxResult['joints']['seams'],
  added: readonly PanelBody[],
  standing: readonly PanelBody[],
): { readonly lengthMm: number; readonly screws: number } {
  const isIn = (bodies: readonly PanelBody[], face: PanelBody['face']) =>
    bodies.some((body) => body.face === face);
  const all = [...added, ...standing];
  const met = seams.filter(
    ({ between: [one, two] }) => isIn(all, one) && isIn(all, two) && (isIn(added, one) || isIn(added, two)),
  );
  return {
    lengthMm: met.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    screws: met.reduce((sum, { screws }) => sum + screws, 0),
  };
}

function glued(
  what: Draft['what'],
  bodies: readonly PanelBody[],
  seam: { readonly lengthMm: number; readonly screws: number },
  { clampMinutes, handleMinutes }: Adhesive,
  factor: number,
): Draft {
  const round = bodies.reduce((sum, { outerFace }) => sum + outlineMm(outerFace), 0);
  const held = what === 'laminate' ? round : seam.lengthMm;
  return {
    what,
    marks: bodies.map(({ mark }) => mark),
    seamMm: seam.lengthMm,
    screws: seam.screws,
    clamps: Math.ceil(held / CLAMP_SPACING_MM),
    clampMinutes: clampMinutes * factor,
    waitMinutes: handleMinutes * factor,
  };
}

function outlineMm(outline: PanelBody['outerFace']): number {
  return outline.reduce((sum, from, index) => {
    const to = outline[(index + 1) % outline.length] ?? from;
    return sum + Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  }, 0);
}

function plain(what: Draft['what'], marks: readonly string[]): Draft {
  return { what, marks: [...marks], seamMm: 0, screws: 0, clamps: 0, clampMinutes: 0, waitMinutes: 0 };
}
