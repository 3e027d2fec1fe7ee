// What the design asks for, as lines with a reason each: sheets from the layout, drivers, finish by its area, and
// the small things from joints and openings (estimating's supplies).
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { BriefResult } from '@gusset/contracts/brief';
import type { BoxSupply, SupplyCode } from '@gusset/contracts/estimating';
import type { PartFact, PartsFacts, PartsLine } from '@gusset/contracts/parts';
import { usualSource } from '@gusset/contracts/parts';
import { coatingLitres, suppliesFromBox, USUAL_JOINTS } from '@gusset/estimating';
import { type EnclosureUpstream, enclosuresOf, type GatheredUpstream } from '../sheet-definition.ts';

/** What the cutting sheet says that parts needs: sheets by catalogue part. */
export type SheetsUsed = {
  readonly sheetsUsed: readonly { readonly partId: string; readonly name: string; readonly count: number }[];
};

export type PartsUpstream = GatheredUpstream & {
  readonly brief?: BriefResult | null;
  readonly cutting?: SheetsUsed | null;
};

const MM_PER_M = 1_000;
const WHOLE_BASIS_POINTS = 10_000;
const ROLLER_LOSS_LITRES = 0.1;
/** Where a roll's width is not given: the narrowest that is common. */
const USUAL_ROLL_MM = 1_370;
const TENTHS = 10;

const USE_OF: Readonly<Record<SupplyCode, string>> = {
  'wood-glue': 'glue',
  'joint-screws': 'screw',
  'seam-sealant': 'sealant',
  'driver-bolts': 't-nut',
  'gasket-tape': 'gasket',
  coating: 'coating',
  carpet: 'carpet',
  'carpet-adhesive': 'contact-adhesive',
};
const UNIT_OF: Readonly<Record<BoxSupply['unit'], PartsLine['unit']>> = {
  L: 'litre',
  'm²': 'm2',
  m: 'm',
  kg: 'kg',
  pcs: 'each',
};

/** The uses that a box can ask for: the binding looks up the shop's usual part for each. */
export const SUPPLY_USES: readonly string[] = [...new Set(Object.values(USE_OF))];

export function derivedLines(facts: PartsFacts, upstream: PartsUpstream): readonly PartsLine[] {
  const partOf = new Map(facts.parts.map((part) => [part.id, part]));
  const usualOf = new Map(facts.usual.map(({ use, partId }) => [use, partOf.get(partId)]));
  return [
    ...sheetLines(upstream, partOf),
    ...driverLines(upstream, partOf),
    ...finishLines(upstream, partOf, usualOf),
    ...supplyLines(upstream, usualOf),
    ...terminalLines(upstream, partOf),
    ...broughtLines(upstream),
  ];
}

type Draft = Pick<PartsLine, 'key' | 'description' | 'kind' | 'group' | 'quantity' | 'unit' | 'because'>;

function lineOf(draft: Draft, part: PartFact | undefined): PartsLine {
  return {
    ...draft,
    partId: part?.id ?? null,
    source: usualSource(part?.stockQuantity ?? 0, draft.quantity),
    supplierId: part?.supplierId ?? null,
    returnDueOn: null,
    note: '',
    workedOutQuantity: null,
  };
}

function sheetLines({ cutting }: PartsUpstream, partOf: ReadonlyMap<string, PartFact>): PartsLine[] {
  return (cutting?.sheetsUsed ?? []).map(({ partId, name, count }) =>
    lineOf(
      {
        key: `sheet:${partId}`,
        description: name,
        kind: 'material',
        group: 'sheet-goods',
        quantity: count,
        unit: 'sheet',
        because: `${count} ${count === 1 ? 'sheet' : 'sheets'} in the layout`,
      },
      partOf.get(partId),
    ),
  );
}

/** One line a driver, however many boxes it sits in. */
function driverLines(upstream: PartsUpstream, partOf: ReadonlyMap<string, PartFact>): PartsLine[] {
  const uses = enclosuresOf(upstream).flatMap((enclosure) =>
    enclosure.sound === null ? [] : [{ ...enclosure, sound: enclosure.sound }],
  );
  return [...Map.groupBy(uses, ({ sound }) => sound.driverId)].map(([driverId, boxes]) => {
    const draft: Draft = {
      key: `driver:${driverId}`,
      description: boxes[0]?.sound.driverName ?? '',
      kind: 'part',
      group: 'driver',
      quantity: boxes.reduce((sum, { copies, sound }) => sum + copies * sound.count, 0),
      unit: 'each',
      because: upstream.enclosures === undefined ? 'as the sound sheet says' : `for ${boxWords(boxes)}`,
    };
    return lineOf(draft, partOf.get(driverId));
  });
}

/** `2 × Rear box, Bass box`: the boxes a line is for. */
function boxWords(boxes: readonly Pick<EnclosureUpstream, 'name' | 'copies'>[]): string {
  return boxes.map(({ name, copies }) => (copies === 1 ? name : `${copies} × ${name}`)).join(', ');
}

/** The boxes that say something, with how many of each are built. */
function boxesOf(upstream: PartsUpstream) {
  return enclosuresOf(upstream).flatMap((enclosure) =>
    enclosure.box === null ? [] : [{ ...enclosure, box: enclosure.box }],
  );
}

function finishLines(
  upstream: PartsUpstream,
  partOf: ReadonlyMap<string, PartFact>,
  usualOf: ReadonlyMap<string, PartFact | undefined>,
): PartsLine[] {
  const faces = boxesOf(upstream).flatMap(({ box, copies }) =>
    box.finishTotals.map((total) => ({ ...total, areaM2: total.areaM2 * copies })),
  );
  return [...Map.groupBy(faces, (total) => total.partId)].flatMap(([partId, totals]) => {
    const name = totals[0]?.name ?? '';
    const areaM2 = totals.reduce((sum, total) => sum + total.areaM2, 0);
    const part = partOf.get(partId);
    const need = finishNeed(part, areaM2);
    const line = lineOf(
      { key: `finish:${partId}`, description: name, kind: 'material', group: 'finish', ...need },
      part,
    );
    const isGlued = part?.finish?.finish === 'carpet' || part?.finish?.finish === 'vinyl';
    return isGlued ? [line, adhesiveLine(partId, name, areaM2, usualOf)] : [line];
  });
}

/** Carpet and vinyl off the roll, coatings by the litre, anything else by area. */
function finishNeed(
  part: PartFact | undefined,
  areaM2: number,
): Pick<Draft, 'quantity' | 'unit' | 'because'> {
  const area = `${areaM2.toFixed(2)} m² of faces`;
  const finish = part?.finish ?? null;
  if (finish === null) return { quantity: upTo(areaM2), unit: 'm2', because: area };
  const waste = finish.wasteBasisPoints / WHOLE_BASIS_POINTS;
  const withWaste = `${area}, ${Math.round(waste * 100)} % waste`;
  if (finish.finish === 'coating' || finish.finish === 'paint') {
    const litres = coatingLitres({
      kind: 'coating',
      name: part?.name ?? 'coating',
      areaM2,
      coats: finish.coats,
      coverageM2PerLitre: finish.coverageM2PerLitre ?? 1,
      wasteBasisPoints: finish.wasteBasisPoints,
      rollerLossLitres: ROLLER_LOSS_LITRES,
    });
    return { quantity: upTo(litres), unit: 'litre', because: `${withWaste}, ${finish.coats} coats` };
  }
  const rollM = (finish.rollWidthMm ?? USUAL_ROLL_MM) / MM_PER_M;
  return {
    quantity: upTo((areaM2 * (1 + waste)) / rollM),
    unit: 'm',
    because: `${withWaste}, roll ${rollM.toFixed(2)} m wide`,
  };
}

/** Contact adhesive, both faces: 1.5 to 2 m² finished a litre in trade practice. */
const ADHESIVE_M2_PER_LITRE = 1.75;

function adhesiveLine(
  finishId: string,
  name: string,
  areaM2: number,
  usualOf: ReadonlyMap<string, PartFact | undefined>,
): PartsLine {
  const part = usualOf.get('contact-adhesive');
  const draft: Draft = {
    key: `adhesive:${finishId}`,
    description: part?.name ?? 'Contact adhesive',
    kind: 'material',
    group: 'finish',
    quantity: upTo(areaM2 / ADHESIVE_M2_PER_LITRE),
    unit: 'litre',
    because: `for ${name}, ${areaM2.toFixed(2)} m², both faces`,
  };
  return lineOf(draft, part);
}

/** Each box by its own joints, then added up. */
function supplyLines(
  upstream: PartsUpstream,
  usualOf: ReadonlyMap<string, PartFact | undefined>,
): PartsLine[] {
  const supplies = boxesOf(upstream).flatMap(({ box, copies }) =>
    suppliesOf(box).map((supply) => ({ ...supply, quantity: supply.quantity * copies })),
  );
  return [...Map.groupBy(supplies, ({ code }) => code)].flatMap(([code, alike]) => {
    const [first] = alike;
    if (first === undefined) return [];
    const part = usualOf.get(USE_OF[code]);
    const draft: Draft = {
      key: `supply:${code}`,
      description: part?.name ?? first.name,
      kind: 'material',
      group: 'hardware',
      quantity: Number(alike.reduce((sum, { quantity }) => sum + quantity, 0).toFixed(6)),
      unit: UNIT_OF[first.unit],
      because: `from the joints and openings of the ${upstream.enclosures === undefined ? 'box' : 'boxes'}`,
    };
    return [lineOf(draft, part)];
  });
}

function suppliesOf(box: BoxSheetResult): readonly BoxSupply[] {
  const { joints, drivers } = box.box;
  return suppliesFromBox({
    ...USUAL_JOINTS,
    finish: { kind: 'none' },
    jointLengthsM: joints.seams.map((seam) => seam.lengthMm / MM_PER_M),
    jointWidthMm: box.carcass.thicknessMm,
    sealedSeamM: joints.shellSeamMm / MM_PER_M,
    drivers: drivers.map((driver) => ({
      boltCount: USUAL_BOLTS,
      gasketM: (Math.PI * driver.cutoutDiaMm) / MM_PER_M,
    })),
  });
}

/** Eight bolts a driver are usual; the hand line changes it where the maker asks for another number. */
const USUAL_BOLTS = 8;

function terminalLines(upstream: PartsUpstream, partOf: ReadonlyMap<string, PartFact>): PartsLine[] {
  return [...Map.groupBy(boxesOf(upstream), ({ box }) => box.terminalPartId)].flatMap(([id, boxes]) => {
    const part = id === null ? undefined : partOf.get(id);
    if (id === null || part === undefined) return [];
    const draft: Draft = {
      key: `terminal:${id}`,
      description: part.name,
      kind: 'part',
      group: 'hardware',
      quantity: boxes.reduce((sum, { copies }) => sum + copies, 0),
      unit: 'each',
      because: upstream.enclosures === undefined ? 'let into the box' : `let into ${boxWords(boxes)}`,
    };
    return [lineOf(draft, part)];
  });
}

/** What customer and sponsor bring, as the brief says. */
function broughtLines({ brief }: PartsUpstream): PartsLine[] {
  return (brief?.broughtParts ?? []).flatMap((brought) => {
    if (brought.bringer === 'shop' || brought.description === '') return [];
    const draft: Draft = {
      key: `brief:${brought.key}`,
      description: brought.description,
      kind: 'part',
      group: 'amplifier',
      quantity: 1,
      unit: 'each',
      because: `brought by the ${brought.bringer}, as the brief says`,
    };
    return [{ ...lineOf(draft, undefined), source: brought.bringer, note: brought.note }];
  });
}

/** Up to the next tenth that can be measured out; a float's last digit does not buy another tenth. */
function upTo(value: number): number {
  return Math.ceil(Number((value * TENTHS).toFixed(6))) / TENTHS;
}
