// Laws of the circuit itself: energy and air are conserved, whatever stands in it.
import { type SoundSystemInput, soundSystemSchema } from '@gusset/contracts/acoustics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TRUTH_CASES } from '../truth/cases.ts';
import { airAt } from './air.ts';
import { buildNetwork } from './build-network.ts';
import { squeezeAdmittance } from './chamber.ts';
import { CURRENT, compileNetwork, OUTSIDE, OUTSIDE_SLOPE } from './compiled-network.ts';
import { add, complex, divide, magnitude, multiply, scale, ZERO } from './complex.ts';
import { type ComplexList, substitute } from './linear-solve.ts';
import type { Network } from './network.ts';
import { solveSlope } from './network-slope.ts';
import { solveNetwork } from './solve-network.ts';
import { blockedImpedance } from './voice-coil.ts';

function networkOf(input: SoundSystemInput): Network {
  const system = soundSystemSchema.parse(input);
  return buildNetwork(system, airAt(system.air)).network;
}

const numberAt = ({ re, im }: ComplexList, place: number) => complex(re[place] ?? Number.NaN, im[place]);

/** A solution as complex numbers, per volt of the source. */
function stateOf(network: Network, frequencyHz: number) {
  const compiled = compileNetwork(network);
  const omega = 2 * Math.PI * frequencyHz;
  solveNetwork(compiled, omega);
  solveSlope(compiled, omega);
  const { unknowns, taps, sums, motorCount } = compiled;
  let motor = 0;
  return {
    omega,
    current: numberAt(sums, CURRENT),
    outsideFlow: numberAt(sums, OUTSIDE),
    outsideSlope: numberAt(sums, OUTSIDE_SLOPE),
    stringCurrents: network.strings.map((_, s) => numberAt(unknowns, network.chambers.length + s)),
    pressures: network.chambers.map((_, k) => scale(numberAt(unknowns, k), 1 / network.driver.sdM2)),
    velocities: network.strings.map(({ motors }) => motors.map(() => numberAt(taps.value, motor++))),
    outletFlows: network.outlets.map((_, o) => numberAt(taps.value, motorCount + o)),
  };
}
type State = ReturnType<typeof stateOf>;

const square = (a: { re: number; im: number }) => a.re ** 2 + a.im ** 2;
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Everything that turns to heat, W per volt². */
function heat(network: Network, state: State): number {
  const blockedOhm = blockedImpedance(network.coil, state.omega).re;
  const drivers = network.strings.map(({ copies, motors }, s) =>
    sum(
      motors.map(({ drivers: inSeries }, m) => {
        const coil = square(state.stringCurrents[s] ?? ZERO) * blockedOhm;
        const suspension = square(state.velocities[s]?.[m] ?? ZERO) * network.driver.rmsNsPerM;
        return copies * inSeries * (coil + suspension);
      }),
    ),
  );
  const chambers = network.chambers.map((chamber, k) => {
    const squeezed = multiply(state.pressures[k] ?? ZERO, squeezeAdmittance(chamber, state.omega));
    return square(squeezed) * chamber.absorption + square(state.pressures[k] ?? ZERO) * chamber.leak;
  });
  const outlets = network.outlets.map(
    (outlet, o) => square(state.outletFlows[o] ?? ZERO) * outlet.acousticResistance,
  );
  const source = square(state.current) * (network.outputOhm + network.cableOhm);
  return sum([...drivers, ...chambers, ...outlets, source]);
}

const caseAndFrequency = fc.tuple(
  fc.constantFrom(...TRUTH_CASES),
  fc.double({ min: 5, max: 500, noNaN: true }),
);

describe('solveNetwork', () => {
  it('turns to heat what the source gives, in every kind of system at any frequency', () => {
    fc.assert(
      fc.property(caseAndFrequency, ([{ input }, frequencyHz]) => {
        const network = networkOf(input);
        const state = stateOf(network, frequencyHz);
        const given = state.current.re; // of one volt, real part of V I*
        expect(Math.abs(heat(network, state) / given - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('moves out of the box exactly the air that its chambers give up', () => {
    fc.assert(
      fc.property(caseAndFrequency, ([{ input }, frequencyHz]) => {
        const network = networkOf(input);
        if (network.chambers.length === 0 || input.enclosure.kind === 'infinite-baffle') return;
        const state = stateOf(network, frequencyHz);
        const squeezed = network.chambers.map((chamber, k) =>
          multiply(state.pressures[k] ?? ZERO, squeezeAdmittance(chamber, state.omega)),
        );
        const net = squeezed.reduce(add, state.outsideFlow);
        const largest = Math.max(magnitude(state.outsideFlow), ...squeezed.map(magnitude));
        expect(magnitude(net) / largest).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('is reciprocal: what blocks the cone electrically is the square of its force factor', () => {
    // A driver in a baffle: Z = Zcoil + BL²/Zm, at resonance Re (1 + Qms/Qes).
    const baffle = TRUTH_CASES.find(({ id }) => id === 'baffle');
    if (baffle === undefined) throw new Error('no baffle case');
    const input = { ...baffle.input, driver: { ...baffle.input.driver, leMh: 0 } };
    const { driver } = input;
    const state = stateOf(networkOf(input), driver.fsHz);
    const ohm = 1 / magnitude(state.current);
    expect(ohm).toBeCloseTo(driver.reOhm * (1 + driver.qms / driver.qes), 9);
  });

  it('radiates from a tight closed box what its cone moves', () => {
    const one = TRUTH_CASES.find(({ id }) => id === 'closed');
    if (one === undefined) throw new Error('no closed case');
    const network = networkOf(one.input);
    const state = stateOf(network, 40);
    const cone = scale(state.velocities[0]?.[0] ?? ZERO, network.driver.sdM2);
    expect(magnitude(cone)).toBeGreaterThan(1e-6);
    expect(magnitude(add(state.outsideFlow, scale(cone, -1)))).toBeLessThan(1e-15);
  });

  it('has the slope of its own flow over frequency, in every kind of system', () => {
    fc.assert(
      fc.property(caseAndFrequency, ([{ input }, frequencyHz]) => {
        const network = networkOf(input);
        const { outsideFlow, outsideSlope, omega } = stateOf(network, frequencyHz);
        const step = 1e-5; // relative: what a central difference loses by is its square
        const above = stateOf(network, frequencyHz * (1 + step)).outsideFlow;
        const below = stateOf(network, frequencyHz * (1 - step)).outsideFlow;
        const difference = scale(add(above, scale(below, -1)), 1 / (2 * step * omega));
        const apart = divide(add(difference, scale(outsideSlope, -1)), outsideFlow);
        expect(magnitude(apart) * omega).toBeLessThan(1e-4);
      }),
      { numRuns: 300 },
    );
  });

  it('is reciprocal between coil and air: a volt here squeezes the box as a flow there pushes the current', () => {
    let compared = 0;
    fc.assert(
      fc.property(caseAndFrequency, ([{ input }, frequencyHz]) => {
        const network = networkOf(input);
        const compiled = compileNetwork(network);
        solveNetwork(compiled, 2 * Math.PI * frequencyHz);
        const { matrix, unknowns, right, unknownSlopes: answer } = compiled;
        const size = network.chambers.length + network.strings.length;
        // One string alone is driven: of several, each on its own.
        network.strings.forEach(({ copies }, s) => {
          const string = network.chambers.length + s;
          network.chambers.forEach((_, chamber) => {
            right.re.fill(0);
            right.re[string] = 1;
            substitute(matrix, right, unknowns);
            right.re.fill(0);
            right.re[chamber] = 1;
            substitute(matrix, right, answer);
            const there = numberAt(unknowns, chamber);
            const here = scale(numberAt(answer, string), copies);
            const largest = Math.max(
              ...Array.from({ length: size }, (_, i) => magnitude(numberAt(answer, i))),
            );
            expect(magnitude(add(there, scale(here, -1)))).toBeLessThan(1e-9 * largest);
            compared++;
          });
        });
      }),
      { numRuns: 200 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});
