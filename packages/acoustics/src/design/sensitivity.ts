// How much resonance, Q, tuning and corner move with each parameter, as slopes in percent per percent, by solving the
// system a little to each side. Ports keep their length. Closed forms: R. H. Small, JAES 1972-73 (see the tests).
import {
  type DesignSystem,
  firstRefusal,
  type Sensitivity,
  type SensitivityInput,
  type SensitivityParameter,
  type SoundFigures,
  sensitivitySchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import { type CompiledSystem, compileSystem } from '../compiled-system.ts';
import { soundFigures } from '../sound-figures.ts';
import { inSystem, withFrequencies } from './design-system.ts';
import {
  type BoxChange,
  changedEnclosure,
  type DriverFactors,
  NO_CHANGE,
  scaledDriver,
  withLengths,
} from './scaled-system.ts';

const STEP = 1e-4; // of a logarithm, to each side: small beside any curvature, large beside rounding
const ZERO_CELSIUS_K = 273.15;

const NO_FACTORS: DriverFactors = { cms: 1, bl: 1, mms: 1, re: 1 };

type Change = (system: DesignSystem, factor: number) => DesignSystem;

const inDriver =
  (name: 'fsHz' | 'qms' | 'qes' | 'vasLitres'): Change =>
  (system, factor) => ({ ...system, driver: { ...system.driver, [name]: system.driver[name] * factor } });

const inElements =
  (name: keyof DriverFactors): Change =>
  (system, factor) => ({
    ...system,
    driver: scaledDriver(system.driver, { ...NO_FACTORS, [name]: factor }),
  });

const inBox =
  (change: (factor: number, system: DesignSystem) => Partial<BoxChange>): Change =>
  (system, factor) => ({
    ...system,
    enclosure: changedEnclosure(system.enclosure, { ...NO_CHANGE, ...change(factor, system) }),
  });

const CHANGES: readonly { readonly parameter: SensitivityParameter; readonly change: Change }[] = [
  { parameter: 'fs', change: inDriver('fsHz') },
  { parameter: 'qms', change: inDriver('qms') },
  { parameter: 'qes', change: inDriver('qes') },
  { parameter: 'vas', change: inDriver('vasLitres') },
  { parameter: 'cms', change: inElements('cms') },
  { parameter: 'bl', change: inElements('bl') },
  { parameter: 'mms', change: inElements('mms') },
  { parameter: 're', change: inElements('re') },
  { parameter: 'net-litres', change: inBox((volume) => ({ volume })) },
  {
    parameter: 'port-length',
    change: inBox((factor, system) => ({ portLengthMm: (factor - 1) * firstPortLengthMm(system) })),
  },
  { parameter: 'port-bore', change: inBox((bore) => ({ bore })) },
  {
    parameter: 'air-temperature',
    change: (system, factor) => ({
      ...system,
      air: {
        ...system.air,
        temperatureC: (system.air.temperatureC + ZERO_CELSIUS_K) * factor - ZERO_CELSIUS_K,
      },
    }),
  },
];

/** One row a parameter, in a fixed order. Refused where a port can't be built or the system can't be. */
export function sensitivities(input: SensitivityInput): readonly Sensitivity[] | Refusal {
  const parsed = sensitivitySchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const compiled = compileSystem(withFrequencies(parsed.data.system));
  if (isRefusal(compiled)) return inSystem(compiled);
  const system = withLengths(parsed.data.system, compiled);
  if (isRefusal(system)) return system;
  const rows: Sensitivity[] = [];
  for (const { parameter, change } of CHANGES) {
    const above = figuresOf(change(system, Math.exp(STEP)));
    const below = figuresOf(change(system, Math.exp(-STEP)));
    if (isRefusal(above)) return inSystem(above);
    if (isRefusal(below)) return inSystem(below);
    rows.push({
      parameter,
      fc: slope(above.fcHz, below.fcHz),
      qtc: slope(above.qtc, below.qtc),
      tuning: slope(above.tuningHz, below.tuningHz),
      f3: slope(above.f3Hz, below.f3Hz),
    });
  }
  return rows;
}

function figuresOf(system: DesignSystem): SoundFigures | Refusal {
  const whole = withFrequencies(system);
  const compiled: CompiledSystem | Refusal = compileSystem(whole);
  return isRefusal(compiled) ? compiled : soundFigures(whole, compiled.built, compiled.air);
}

function slope(above: number | null, below: number | null): number | null {
  return above === null || below === null ? null : Math.log(above / below) / (2 * STEP);
}

/** Of the port whose tuning is looked at: the front one of a bandpass box. */
function firstPortLengthMm({ enclosure }: DesignSystem): number {
  const port =
    enclosure.kind === 'vented' ? enclosure.port : 'frontPort' in enclosure ? enclosure.frontPort : null;
  return port !== null && port.sizing.by === 'length' ? port.sizing.lengthMm : 0;
}
