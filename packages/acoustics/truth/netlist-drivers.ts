// Drivers as parts of their own: coils on a shared flux, a force loop, two faces.
import { type Draft, mechanics, type System } from './netlist-parts.ts';

/** Drivers between nodes of strings; an isobaric pair stands front to back on the node `between`. */
export function writeDrivers(draft: Draft, system: System, stiffness: number): void {
  const { array } = system;
  const rear = system.enclosure.kind === 'infinite-baffle' ? '0' : 'rear';
  const front = 'front' in system.enclosure ? 'front' : 'open';
  let index = 0;
  for (let string = 0; string < array.parallelStrings; string++) {
    for (let place = 0; place < array.seriesPerString; place++) {
      const top = place === 0 ? 'top' : `s${string}_${place}`;
      const bottom = place === array.seriesPerString - 1 ? '0' : `s${string}_${place + 1}`;
      const isOuter = index === 0;
      const pairFront = isOuter ? front : 'between';
      const pairRear = isOuter ? 'between' : rear;
      const faces = array.isobaric === null ? { front, rear } : { front: pairFront, rear: pairRear };
      writeDriver(draft, system, { index, top, bottom, ...faces });
      index++;
    }
  }
  if (array.isobaric !== null) {
    draft.lines.push(`Cbetween between 0 ${array.isobaric.couplingLitres / 1e3 / stiffness}`);
    draft.vectors.inner = 'i(vmot1)';
  }
  draft.vectors.cone = 'i(vmot0)';
}

type Place = { index: number; top: string; bottom: string; front: string; rear: string };

function writeDriver(draft: Draft, system: System, { index: d, top, bottom, front, rear }: Place): void {
  const { driver, array } = system;
  const parts = mechanics(system);
  const wired = array.coilWiring === 'single' ? 1 : driver.coils;
  const forces: string[] = [];
  for (let coil = 0; coil < wired; coil++) {
    const inSeries = array.coilWiring === 'series' && wired > 1;
    const from = inSeries && coil > 0 ? `j${d}_${coil}` : top;
    const to = inSeries && coil < wired - 1 ? `j${d}_${coil + 1}` : bottom;
    const name = `${d}_${coil}`;
    draft.lines.push(
      `Re${name} ${from} a${name} ${driver.reOhm}`,
      `Vc${name} a${name} b${name} 0`,
      `Ef${name} b${name} c${name} flux${d} 0 1`, // voltage from the shared flux
      `Hm${name} c${name} ${to} Vmot${d} ${parts.bl}`, // voltage from motion
      `Ff${name} 0 flux${d} Vc${name} 1`, // its current makes that flux
    );
    forces.push(name);
  }
  writeFlux(draft, driver, d);
  // Force loop: coil forces drive mass, compliance, resistance against the pressure difference.
  let node = '0';
  for (const name of forces) {
    draft.lines.push(`Hf${name} f${name} ${node} Vc${name} ${parts.bl}`);
    node = `f${name}`;
  }
  draft.lines.push(
    `Vmot${d} ${node} m${d}a 0`,
    `Lm${d} m${d}a m${d}b ${parts.mass}`,
    `Cm${d} m${d}b m${d}c ${parts.compliance}`,
    `Rm${d} m${d}c m${d}d ${parts.resistance}`,
    `Ep${d} m${d}d 0 ${front === 'open' ? '0' : front} ${rear} ${parts.area}`,
  );
  if (front === 'open') draft.outside.push(`Fu${d} 0 flows Vmot${d} ${parts.area}`);
  else draft.lines.push(`Fa${d} 0 ${front} Vmot${d} ${parts.area}`);
  if (rear !== '0') draft.lines.push(`Fb${d} ${rear} 0 Vmot${d} ${parts.area}`);
}

function writeFlux(draft: Draft, driver: System['driver'], d: number): void {
  const lossy = driver.l2Mh !== null && driver.r2Ohm !== null;
  const end = lossy ? `flux${d}x` : '0';
  draft.lines.push(
    driver.leMh > 0 ? `Le${d} flux${d} ${end} ${driver.leMh / 1e3}` : `Vle${d} flux${d} ${end} 0`,
  );
  if (lossy)
    draft.lines.push(`L2${d} ${end} 0 ${(driver.l2Mh ?? 0) / 1e3}`, `R2${d} ${end} 0 ${driver.r2Ohm}`);
}
