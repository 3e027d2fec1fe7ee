// Random boxes with ports, for the tests: slots along every wall and side, straight and bent, and pipes.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import fc from 'fast-check';
import { anyDesign } from './arbitrary-design.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const slot = fc.record({
  kind: fc.constant('slot' as const),
  face: fc.constantFrom('front' as const, 'back' as const, 'top' as const),
  along: fc.constantFrom(
    'bottom' as const,
    'top' as const,
    'front' as const,
    'left' as const,
    'right' as const,
  ),
  heightMm: mm(20, 60),
  widthMm: fc.option(mm(60, 200)),
  acrossMm: fc.option(mm(-120, 120)),
  lengthMm: mm(60, 900),
  bendsAllowed: fc.constantFrom(0, 1, 2),
});

const tube = fc.record({
  kind: fc.constant('tube' as const),
  face: fc.constantFrom('front' as const, 'back' as const, 'left' as const, 'top' as const),
  count: fc.integer({ min: 1, max: 2 }),
  insideDiaMm: mm(40, 100),
  wallMm: mm(2, 5),
  lengthMm: mm(80, 250),
  outerFlareMm: fc.constantFrom(0, 12),
  innerFlareMm: fc.constantFrom(0, 12),
  massKg: fc.constant(0.3),
  at: fc.constant(null),
});

export const anyPortedDesign: fc.Arbitrary<BoxDesign> = fc
  .tuple(anyDesign, fc.array(fc.oneof({ weight: 3, arbitrary: slot }, tube), { minLength: 1, maxLength: 2 }))
  .map(([design, ports]) => ({
    ...design,
    ports: ports.map((port) =>
      port.kind === 'slot' && (port.along === 'left' || port.along === 'right')
        ? { ...port, widthMm: null }
        : port,
    ),
  }));
