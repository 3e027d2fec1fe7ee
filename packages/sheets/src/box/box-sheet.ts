// Sheet 04. The enclosure engine builds the box and the cargo engine stands it in the car; this file gathers what they
// need and names the figures that others read.
import {
  type BoxFacts,
  type BoxInput,
  type BoxNote,
  type BoxPlace,
  type BoxSheetResult,
  boxInputSchema,
  DEFAULT_CUTOUT_CLEARANCE_MM,
  type FinishTotal,
} from '@gusset/contracts/box';
import type { BoxDesign, BoxResult } from '@gusset/contracts/enclosure';
import { buildBox } from '@gusset/enclosure';
import { isRefusal } from '@gusset/units';
import { incomplete, ready, refused, type SheetDefinition, type SheetOutcome } from '../sheet-definition.ts';
import { type BoxUpstream, boxDesignOf } from './box-design.ts';
import { atBoxField } from './box-fields.ts';
import { boxFactFigures, boxKeyFigures } from './box-figures.ts';
import { placeInSection } from './box-place.ts';
import { storable } from './storable.ts';

export const boxSheet: SheetDefinition<BoxInput, BoxFacts, BoxUpstream, BoxSheetResult> = {
  kind: 'box',
  engineVersion: 1,
  optionalReads: ['survey'],
  inputSchema: boxInputSchema,
  emptyInput: () => ({
    shape: 'rectangular',
    outside: { width: null, height: null, depth: null, depthTop: null, kneeHeight: null },
    slopedFace: 'back',
    carcassId: null,
    baffleId: null,
    finishes: { front: null, back: null, top: null, bottom: null, left: null, right: null, slopes: null },
    finishWrapsOpenings: false,
    baffle: { face: 'front', doubler: null },
    drivers: {
      mount: 'surface',
      fixing: null,
      positions: null,
      cutoutClearance: {
        mm: DEFAULT_CUTOUT_CLEARANCE_MM,
        typed: String(DEFAULT_CUTOUT_CLEARANCE_MM),
        unit: 'mm',
      },
      grilleStandOff: null,
    },
    joints: { corners: 'butt', sides: 'butt' },
    baffleSetBack: null,
    roundOver: null,
    divider: null,
    bracing: { kind: 'suggested' },
    cornerBlocks: null,
    terminalCup: null,
    lining: 'none',
    lowPassHz: 100,
    place: { by: 'rest', back: null, gap: null },
    notes: '',
  }),
  compute: computeBox,
  keyFigures: boxKeyFigures,
  factFigures: boxFactFigures,
};

function computeBox(input: BoxInput, facts: BoxFacts, upstream: BoxUpstream): SheetOutcome<BoxSheetResult> {
  const designed = boxDesignOf(input, facts, upstream);
  if ('missing' in designed) return incomplete(designed.missing);
  const { design, carcass, baffle } = designed;
  const box = buildBox(design);
  if (isRefusal(box)) return refused([atBoxField(box.refusal)]);
  const sound = upstream.sound ?? null;
  const stood = standing(input, facts, upstream, { design, box });
  const { payloadKg } = facts;
  return ready(
    storable({
      design,
      box,
      carcass,
      baffle,
      isDraft: !(carcass.isMeasured && baffle.isMeasured),
      driver:
        sound === null || facts.driver === null
          ? null
          : { id: facts.driver.id, name: facts.driver.name, count: sound.count },
      finishTotals: finishTotals(input, facts, box),
      terminalPartId: input.terminalCup?.partId ?? null,
      place: stood.place,
      payloadKg,
      notes: [...stood.notes, ...designed.notes, ...payloadNotes(box, payloadKg)],
    }),
  );
}

type Built = { readonly design: BoxDesign; readonly box: BoxResult };
type Standing = { readonly place: BoxPlace | null; readonly notes: readonly BoxNote[] };

function standing(input: BoxInput, facts: BoxFacts, { survey }: BoxUpstream, built: Built): Standing {
  const cavity = survey?.cavity ?? null;
  if (cavity === null) return { place: null, notes: [{ code: 'no-survey' }] };
  const place = placeInSection({ input, facts, cavity, ...built });
  if (isRefusal(place)) return { place: null, notes: [{ code: 'no-place', why: place.refusal.why }] };
  return { place, notes: [] };
}

function payloadNotes({ mass }: BoxResult, payloadKg: number | null): readonly BoxNote[] {
  const boxKg = mass.withDriversKg;
  return payloadKg === null || boxKg <= payloadKg ? [] : [{ code: 'payload-over', boxKg, payloadKg }];
}

/** Outer wood by finish. */
function finishTotals({ finishes }: BoxInput, facts: BoxFacts, { finishAreas }: BoxResult): FinishTotal[] {
  const named = new Map<string, string | null>(Object.entries(finishes));
  return facts.finishes.map(({ id, name }) => ({
    partId: id,
    name,
    areaM2: finishAreas
      .filter(({ face }) => named.get(face.startsWith('slope-') ? 'slopes' : face) === id)
      .reduce((sum, { areaM2, openingsM2 }) => sum + areaM2 - openingsM2, 0),
  }));
}
