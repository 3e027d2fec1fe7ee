// For tests: a box that has to come out, and what is looked up in it.
import type { BoxDesign, BoxFinding, BoxFindingCode, BoxResult } from '@gusset/contracts/enclosure';
import type { Panel } from '@gusset/contracts/panel';
import { isRefusal } from '@gusset/units';
import { buildBox } from './build-box.ts';
import { example, MDF_18, QUINCE_10 } from './example-designs.ts';

export function built(design: BoxDesign): BoxResult {
  const box = buildBox(design);
  if (isRefusal(box)) throw new Error(`${box.refusal.field}: ${box.refusal.why}`);
  return box;
}

export function finding<Code extends BoxFindingCode>(
  box: BoxResult,
  code: Code,
): Extract<BoxFinding, { code: Code }> | undefined {
  return box.findings.find((it): it is Extract<BoxFinding, { code: Code }> => it.code === code);
}

export function panel(box: BoxResult, id: string): Panel {
  const found = box.panels.find((it) => it.id === id);
  if (found === undefined) throw new Error(`no panel ${id}`);
  return found;
}

type Mounted = NonNullable<BoxDesign['drivers']>;

export function withDrivers(
  design: BoxDesign,
  body: Partial<Mounted['body']>,
  more: Partial<Mounted> = {},
): BoxDesign {
  const { drivers } = example({
    shape: { kind: 'rectangular', widthMm: 700, heightMm: 380, depthMm: 420 },
    stock: { carcass: MDF_18 },
    baffle: { face: 'front' },
    drivers: { count: 1, body: QUINCE_10, mount: 'surface' },
  });
  if (drivers === null) throw new Error('a design with drivers has drivers');
  return { ...design, drivers: { ...drivers, ...more, body: { ...drivers.body, ...body } } };
}
