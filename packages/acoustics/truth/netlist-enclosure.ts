// Chambers, ports and radiators, one part each.
import { type Draft, mechanics, REFERENCE_STIFFNESS_PA, type System } from './netlist-parts.ts';

type ChamberInput = { netLitres: number; fillFactor: number; ql: number | null; qa: number | null };
type PortInput = Extract<System['enclosure'], { kind: 'vented' }>['port'];

export type AirHere = { rho: number; c: number; stiffness: number };

export function writeEnclosure(draft: Draft, system: System, air: AirHere): void {
  const { enclosure } = system;
  if (enclosure.kind === 'infinite-baffle') return;
  const closedAt = (chamber: ChamberInput) => {
    const parts = mechanics(system);
    const count = system.array.isobaric === null ? system.array.count : 0.5;
    const air0 = (chamber.netLitres * chamber.fillFactor) / 1e3 / air.stiffness;
    const alpha = (count * parts.compliance * parts.area ** 2) / air0;
    return 2 * Math.PI * system.driver.fsHz * Math.sqrt(1 + alpha);
  };
  if (enclosure.kind === 'closed') {
    writeChamber(draft, 'rear', enclosure.chamber, closedAt(enclosure.chamber), air);
  } else if (enclosure.kind === 'vented') {
    writeVented(draft, 'rear', enclosure.chamber, enclosure.port, air, 'port');
  } else if (enclosure.kind === 'passive-radiator') {
    writeRadiators(draft, enclosure, air);
  } else {
    if (enclosure.kind === 'dual-tuned-bandpass') {
      writeVented(draft, 'rear', enclosure.rear, enclosure.rearPort, air, 'rearPort');
    } else {
      writeChamber(draft, 'rear', enclosure.rear, closedAt(enclosure.rear), air);
    }
    writeVented(draft, 'front', enclosure.front, enclosure.frontPort, air, 'port');
  }
}

function writeChamber(draft: Draft, node: string, chamber: ChamberInput, omega: number, air: AirHere): void {
  const cab = (chamber.netLitres * chamber.fillFactor) / 1e3 / air.stiffness;
  const inner = chamber.qa === null ? node : `${node}x`;
  if (chamber.qa !== null) draft.lines.push(`Rab${node} ${node} ${inner} ${1 / (omega * cab * chamber.qa)}`);
  draft.lines.push(`Cab${node} ${inner} 0 ${cab}`);
  if (chamber.ql === null) return;
  draft.lines.push(`Ral${node} ${node} ${node}l ${chamber.ql / (omega * cab)}`, `Vleak${node} ${node}l 0 0`);
  draft.outside.push(`Fleak${node} 0 flows Vleak${node} 1`);
}

/** Flare by adding up thin slices of (a/r)², 20 000 of them, instead of the closed integral. */
function sliceFlare(radius: number, flare: number): number {
  const slices = 20_000;
  let sum = 0;
  // x = flare sin(t): even slices of the angle, because the bell is steep at its rim.
  for (let i = 0; i < slices; i++) {
    const t = ((i + 0.5) / slices) * (Math.PI / 2);
    const r = radius + flare - flare * Math.cos(t);
    sum += (radius / r) ** 2 * flare * Math.cos(t) * (Math.PI / 2 / slices);
  }
  return sum;
}

function endLength(end: PortInput['outerEnd'], radius: number): number {
  const flare = end.flareRadiusMm / 1e3;
  const k = end.kind === 'flanged' ? 8 / (3 * Math.PI) : 0.6133;
  // Beyond the mouth of radius M the end term of that mouth, referred to the throat by the square of areas' ratio.
  const mouth = radius + flare;
  return sliceFlare(radius, flare) + k * mouth * 2 ** (end.walls / 2) * (radius / mouth) ** 2;
}

function writeVented(
  draft: Draft,
  node: string,
  chamber: ChamberInput,
  port: PortInput,
  air: AirHere,
  name: string,
): void {
  const one =
    port.mouth.shape === 'round'
      ? Math.PI * (port.mouth.diameterMm / 2e3) ** 2
      : port.mouth.widthMm * port.mouth.heightMm * 1e-6;
  const radius = Math.sqrt(one / Math.PI);
  const volume = (chamber.netLitres * chamber.fillFactor) / 1e3;
  const cab = volume / air.stiffness;
  const flares = (port.outerEnd.flareRadiusMm + port.innerEnd.flareRadiusMm) / 1e3;
  const mass =
    port.sizing.by === 'tuning'
      ? port.count / ((2 * Math.PI * port.sizing.tuningHz) ** 2 * cab)
      : (air.rho *
          (port.sizing.lengthMm / 1e3 -
            flares +
            endLength(port.outerEnd, radius) +
            endLength(port.innerEnd, radius))) /
        one;
  const omega = Math.sqrt(port.count / (mass * cab));
  writeChamber(draft, node, chamber, omega, air);
  for (let i = 0; i < port.count; i++) {
    const tag = `${name}${i}`;
    draft.lines.push(
      `Lp${tag} ${node} ${tag}a ${mass}`,
      `Rp${tag} ${tag}a ${tag}b ${port.qp === null ? 1e-9 : (omega * mass) / port.qp}`,
      `Vp${tag} ${tag}b 0 0`,
    );
    draft.outside.push(`Fp${tag} 0 flows Vp${tag} 1`);
  }
  draft.vectors[name] = `i(vp${name}0)`; // the air speed of one port is that of each
  draft.portAreaM2[name] = one;
}

function writeRadiators(
  draft: Draft,
  { chamber, radiator }: Extract<System['enclosure'], { kind: 'passive-radiator' }>,
  air: AirHere,
): void {
  const area = radiator.sdCm2 * 1e-4;
  const own = 2 * Math.PI * radiator.fsHz;
  const compliance = (radiator.vasLitres * 1e-3) / (REFERENCE_STIFFNESS_PA * area * area);
  const bare = 1 / (own * own * compliance);
  const mass = bare + radiator.addedMassGrams / 1e3;
  const cab = (chamber.netLitres * chamber.fillFactor) / 1e3 / air.stiffness;
  const stiffness = 1 / compliance + (radiator.count * area ** 2) / cab;
  writeChamber(draft, 'rear', chamber, Math.sqrt(stiffness / mass), air);
  for (let i = 0; i < radiator.count; i++) {
    draft.lines.push(
      `Lr${i} rear r${i}a ${mass / area ** 2}`,
      `Cr${i} r${i}a r${i}b ${compliance * area ** 2}`,
      `Rr${i} r${i}b r${i}c ${(own * bare) / radiator.qms / area ** 2}`,
      `Vr${i} r${i}c 0 0`,
    );
    draft.outside.push(`Fr${i} 0 flows Vr${i} 1`);
  }
  draft.vectors.radiator = 'i(vr0)';
  draft.radiatorAreaM2 = area;
}
