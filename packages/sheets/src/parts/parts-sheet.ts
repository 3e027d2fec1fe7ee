// Sheet 07: what the design asks for, as a person changed it, and what they added by hand.
import {
  type PartsFacts,
  type PartsInput,
  type PartsLine,
  type PartsOverride,
  type PartsResult,
  partsInputSchema,
} from '@gusset/contracts/parts';
import { incomplete, type KeyFigure, ready, type SheetDefinition } from '../sheet-definition.ts';
import { derivedLines, type PartsUpstream } from './derived-lines.ts';

export const partsSheet: SheetDefinition<PartsInput, PartsFacts, PartsUpstream, PartsResult> = {
  kind: 'parts',
  engineVersion: 1,
  // A job without a box (a wiring job, a swap of drivers) has parts too.
  optionalReads: ['brief', 'sound', 'box', 'cutting'],
  inputSchema: partsInputSchema,
  emptyInput: () => ({ handLines: [], overrides: [], settledBriefKeys: [] }),
  compute(input, facts, upstream) {
    const overrides = new Map(input.overrides.map((override) => [override.key, override]));
    const names = new Map(facts.parts.map((part) => [part.id, part.name]));
    const turnedDown = new Set(input.settledBriefKeys.map((key) => `brief:${key}`));
    const fromDesign = derivedLines(facts, upstream)
      .filter((line) => !turnedDown.has(line.key))
      .flatMap((line) => overridden(line, overrides.get(line.key), names));
    const byHand: PartsLine[] = input.handLines.map((line) => ({
      ...line,
      description:
        line.description === '' && line.partId !== null ? (names.get(line.partId) ?? '') : line.description,
      because: 'added by hand',
      workedOutQuantity: null,
    }));
    const unnamed = byHand.findIndex((line) => line.description === '');
    if (unnamed >= 0) {
      return incomplete([
        { field: `handLines.${unnamed}.description`, what: `what line ${unnamed + 1} by hand is` },
      ]);
    }
    // None at all is an answer too: a job of labour only, whose price reads that there are no parts.
    return ready({ lines: [...fromDesign, ...byHand] });
  },
  keyFigures: (result) =>
    result.lines.map(
      (line): KeyFigure => ({
        key: line.key,
        label: line.description,
        value: `${line.quantity} ${line.unit}, ${line.source}`,
      }),
    ),
  factFigures: (facts) => facts.parts.map((part) => ({ key: part.id, label: part.name, value: part.unit })),
};

/** As the design says, as a person changed it, or left out. */
function overridden(
  line: PartsLine,
  override: PartsOverride | undefined,
  names: ReadonlyMap<string, string>,
): readonly PartsLine[] {
  if (override === undefined) return [line];
  if (override.leftOut) return [];
  const partId = override.partId ?? line.partId;
  const isChanged = override.quantity !== null && override.quantity !== line.quantity;
  return [
    {
      ...line,
      partId,
      description:
        override.partId === null ? line.description : (names.get(override.partId) ?? line.description),
      quantity: override.quantity ?? line.quantity,
      workedOutQuantity: isChanged ? line.quantity : null,
      because: override.reason === '' ? line.because : override.reason,
      source: override.source ?? line.source,
      supplierId: override.supplierId ?? line.supplierId,
      returnDueOn: override.returnDueOn ?? line.returnDueOn,
    },
  ];
}
