// The box as drawn: sheet 03 says what it is, sheet 04 how much air it really got. Issued revisions count before drafts.
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import type { BoxSheetResult } from '@gusset/contracts/box';
import { revisionLetter, SHEETS, type SheetKind } from '@gusset/contracts/sheet';
import {
  designOf,
  type SoundInput,
  type SoundResult,
  toSoundInput,
  toSoundResult,
} from '@gusset/contracts/sound';
import { enclosureOf } from '@gusset/sheets';
import { notAccepted, ShopError } from '../errors.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import { type SheetBook, sheetBook } from '../sheets/sheet-book.ts';

export type DrawnBox = {
  readonly system: SoundSystemInput;
  /** What it was read from: `03 Sound B`, `04 Box draft`. */
  readonly from: readonly string[];
};

type Read<Input, Result> = { readonly input: Input; readonly result: Result; readonly from: string };

export async function drawnBox(scope: SheetScope): Promise<DrawnBox> {
  const book = sheetBook(scope);
  const sound = await newest<SoundInput, SoundResult>(book, 'sound');
  if (sound === null) {
    const message = 'Sheet 03 says nothing yet: there is no drawing to lay the built box beside.';
    throw new ShopError('SHEET_INCOMPLETE', message, { fields: [{ path: 'sound', message }] });
  }
  const box = await newest<unknown, BoxSheetResult>(book, 'box');
  const design = designOf(toSoundInput(sound.input));
  const { parameters } = toSoundResult(sound.result);
  const { count, seriesPerString, coilWiring } = design;
  const enclosure = enclosureOf(design);
  if (enclosure.kind !== 'closed' && enclosure.kind !== 'vented') {
    throw notAccepted(
      'sweepId',
      'Only closed and vented boxes of one chamber can be told from their impedance.',
    );
  }
  const netLitres = box?.result.box.volumes.netLitres ?? enclosure.chamber.netLitres;
  return {
    from: [sound.from, ...(box === null ? [] : [box.from])],
    system: {
      frequenciesHz: [20],
      source: { voltageVrms: 1 },
      driver: parameters,
      array: {
        count,
        seriesPerString,
        parallelStrings: count / seriesPerString,
        coilWiring,
        isobaric: design.isobaric === null ? null : { couplingLitres: design.isobaric.coupling?.litres ?? 1 },
      },
      enclosure: { ...enclosure, chamber: { ...enclosure.chamber, netLitres } },
    },
  };
}

/** Typed by the kind, as `anySheet` says of every sheet's stored JSON. */
async function newest<Input, Result>(book: SheetBook, kind: SheetKind): Promise<Read<Input, Result> | null> {
  const title = `${SHEETS[kind].number} ${SHEETS[kind].title}`;
  const issue = (await book.latest()).get(kind);
  if (issue !== undefined) {
    return {
      input: issue.input as Input,
      result: issue.result as Result,
      from: `${title} ${revisionLetter(issue.revision)}`,
    };
  }
  const { input, outcome } = await book.open(kind);
  if (outcome.state !== 'ready') return null;
  return { input: input as Input, result: outcome.result as Result, from: `${title} draft` };
}
