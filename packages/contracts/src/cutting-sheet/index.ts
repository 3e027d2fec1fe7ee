// Sheet 05, Cutting: what someone decides about sheets, saw and spare parts; the layout as issued.
import { z } from 'zod';
import { idSchema, instantSchema, notesSchema, shortTextSchema, typedLengthSchema } from '../common/index.ts';
import { ADHESIVE_KINDS } from '../cutting/adhesives.ts';
import type { CutListRow, LayoutResult, LayoutTotals } from '../cutting/index.ts';
import type { SheetFigures } from '../records/index.ts';

/** Largest side of a blank, an offcut or a sheet, mm. */
const SIDE_LIMIT_MM = 5_000;
/** Layouts that one search may try: the server repeats it whenever the sheet is opened. */
export const MOST_LAYOUTS_TRIED = 10_000;

const sideSchema = typedLengthSchema(0.1, SIDE_LIMIT_MM);
/** A key that stays with a row while it is edited. */
const rowKeySchema = z.string().min(1).max(40);
const grainSchema = z.enum(['length', 'width', 'none']);

export const handOffcutSchema = z.strictObject({
  key: rowKeySchema,
  /** The board of the catalogue that it was cut from; taken to be as thick. */
  boardId: idSchema.nullable(),
  /** Along x, where the board's grain runs if it has one. */
  length: sideSchema.nullable(),
  width: sideSchema.nullable(),
  count: z.number().int().min(1).max(40),
  /** The one in the rack that it is; null = only typed here. */
  offcutId: idSchema.nullable().default(null),
});
export type HandOffcut = z.infer<typeof handOffcutSchema>;

export const handPartSchema = z.strictObject({
  key: rowKeySchema,
  name: shortTextSchema,
  boardId: idSchema.nullable(),
  length: sideSchema.nullable(),
  width: sideSchema.nullable(),
  quantity: z.number().int().min(1).max(100),
  /** Which side lies along the grain; none = may turn. */
  grain: grainSchema,
});
export type HandPart = z.infer<typeof handPartSchema>;

export const layoutSearchSchema = z.strictObject({
  seed: z.number().int().min(1).max(1_000_000),
  iterations: z.number().int().min(1).max(MOST_LAYOUTS_TRIED),
});
/** Same seed and same number of layouts tried, same layout: browser and server agree. */
export type LayoutSearch = Readonly<z.infer<typeof layoutSearchSchema>>;

const SHOP_MACHINES = { bit: null, bush: null, pass: null, baseToBlade: null };
/** What is in the router and beside the saw; null = a usual bit and pass, no guide bush, a rail on the line itself. */
const machinesSchema = z.strictObject({
  bit: typedLengthSchema(1, 60).nullable(),
  bush: typedLengthSchema(1, 100).nullable(),
  pass: typedLengthSchema(0.5, 30).nullable(),
  baseToBlade: typedLengthSchema(0, 500).nullable(),
});

const USUAL_GLUING = { adhesive: 'pva', temperatureC: 20 } as const;
const gluingSchema = z.strictObject({
  adhesive: z.enum(ADHESIVE_KINDS),
  /** Of the shop while it sets. */
  temperatureC: z.number().min(-20).max(45),
});

/** A mock-up of the side profile was tried in the car. */
const testFitSchema = z.strictObject({
  /** Of the profile that was tried: another profile wants another try. */
  profile: z.string().min(1).max(40),
  wentIn: z.boolean(),
  cameOut: z.boolean(),
  by: shortTextSchema,
  at: instantSchema,
});
export type TestFit = z.infer<typeof testFitSchema>;

export const cuttingInputSchema = z.strictObject({
  /** Null = as the shop's saw is set. */
  kerf: typedLengthSchema(0, 50).nullable(),
  trim: typedLengthSchema(0, 200).nullable(),
  /** Added to edges that run past their neighbour, to be trimmed flush after glue-up; null = cut to size. */
  oversize: typedLengthSchema(0, 10).nullable(),
  /** False: every part lies as the list says, whatever the sheet. */
  mayTurn: z.boolean(),
  /** One large offcut never takes another sheet for it. */
  aim: z.enum(['fewest-sheets', 'least-board', 'largest-offcut']),
  /** Which sheets of the catalogue each board may be cut from; a board that is not named is cut from itself. */
  sheetChoices: z.array(z.strictObject({ boardId: idSchema, sheetIds: z.array(idSchema).max(12) })).max(12),
  offcuts: z.array(handOffcutSchema).max(30),
  handParts: z.array(handPartSchema).max(60),
  spares: z
    .array(z.strictObject({ panelId: z.string().min(1).max(60), count: z.number().int().min(1).max(20) }))
    .max(60),
  /** The searches that found a better layout than the first; boards that are not named take the usual one. */
  searches: z.array(layoutSearchSchema.extend({ boardId: idSchema })).max(12),
  /** Drafts from before the router had a page lack it. */
  machines: machinesSchema.default(SHOP_MACHINES),
  gluing: gluingSchema.default(USUAL_GLUING),
  /** Null or left out = nobody has tried it in the car. */
  testFit: testFitSchema.nullable().optional(),
  notes: notesSchema,
});
export type CuttingInput = z.infer<typeof cuttingInputSchema>;

/** A sheet material of the catalogue, without its price. */
export type BoardFact = { readonly id: string; readonly name: string; readonly figures: SheetFigures };

export type CuttingFacts = {
  /** Each board that the box, an offcut or a part by hand is cut from, and each sheet chosen for one, by id. */
  readonly boards: readonly BoardFact[];
  readonly saw: { readonly kerfMm: number; readonly trimMm: number; readonly bladeMaxTiltDeg: number };
};

export type CutRow = CutListRow & {
  /** How many of `quantity` are spare. */
  readonly spares: number;
  readonly isByHand: boolean;
};

/** One size of sheet that the layout takes, or one kind of offcut from the rack. */
export type SheetTaken = {
  /** The layout's `stockId`. */
  readonly stockId: string;
  /** Null for an offcut. */
  readonly partId: string | null;
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly count: number;
  /** Mass of one whole sheet, as it has to be lifted. */
  readonly massKg: number;
};

/** One material and thickness: its list, its layout, the sheets it takes. */
export type CutBoard = {
  readonly boardId: string;
  readonly name: string;
  readonly thicknessMm: number;
  /** False = as sold: the list stays a draft until the real sheet has been measured. */
  readonly isMeasured: boolean;
  /** Side of the sheet along which the grain runs. */
  readonly grain: SheetFigures['grain'];
  readonly rows: readonly CutRow[];
  readonly pieces: number;
  readonly massKg: number;
  readonly sheets: readonly SheetTaken[];
  /** Without prices. */
  readonly layout: LayoutResult;
  readonly search: LayoutSearch;
};

/** What to settle or to mind before cutting. The sentence is the screen's. */
export type CuttingNote =
  | {
      readonly code: 'thickness-nominal';
      readonly boardId: string;
      readonly name: string;
      readonly thicknessMm: number;
    }
  /** The sheet was measured after the box was drawn: the box has to be issued again. */
  | {
      readonly code: 'thickness-moved';
      readonly boardId: string;
      readonly name: string;
      readonly drawnMm: number;
      readonly measuredMm: number;
    }
  /** A sheet chosen beside the board is not as thick. */
  | {
      readonly code: 'thickness-differs';
      readonly sheetId: string;
      readonly name: string;
      readonly thicknessMm: number;
      readonly boardMm: number;
    }
  /** The saw's blade does not tilt that far. */
  | {
      readonly code: 'beyond-tilt';
      readonly mark: string;
      readonly bevelDeg: number;
      readonly limitDeg: number;
    }
  /** The rack and the chosen sheets have no room for these. */
  | {
      readonly code: 'unplaced';
      readonly boardId: string;
      readonly name: string;
      readonly marks: readonly string[];
    }
  | { readonly code: 'heavy-sheet'; readonly name: string; readonly massKg: number }
  /** A spare was asked for of a panel that the box no longer has. */
  | { readonly code: 'spare-gone'; readonly panelId: string };

export type CuttingResult = {
  /** True while a thickness is only nominal, or has changed since the box was drawn. */
  readonly isDraft: boolean;
  readonly kerfMm: number;
  readonly trimMm: number;
  readonly boards: readonly CutBoard[];
  /** Whole sheets of the catalogue that the layout takes; offcuts from the rack are not counted. */
  readonly sheetsUsed: readonly { readonly partId: string; readonly name: string; readonly count: number }[];
  readonly totals: LayoutTotals;
  readonly pieces: number;
  readonly massKg: number;
  readonly notes: readonly CuttingNote[];
};
