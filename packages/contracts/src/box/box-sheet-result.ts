// Sheet 04, Box: the records it reads and what comes out, as issued.
import type { ClearanceSettings, OpeningCheck, Placement } from '../cargo/index.ts';
import type { BoxDesign, BoxResult } from '../enclosure/index.ts';
import type { Pose } from '../geometry/index.ts';
import type { DriverFigures, FinishFigures, SheetFigures } from '../records/index.ts';

export type SheetFact = { readonly id: string; readonly name: string; readonly figures: SheetFigures };
export type FinishFact = { readonly id: string; readonly name: string; readonly figures: FinishFigures };
export type DriverFact = { readonly id: string; readonly name: string; readonly figures: DriverFigures };

export type BoxFacts = {
  /** Null = not chosen, or no longer in the catalogue. */
  readonly carcass: SheetFact | null;
  readonly baffle: SheetFact | null;
  /** Each finish that some face names, once, by id. */
  readonly finishes: readonly FinishFact[];
  /** The driver that the sound sheet names. */
  readonly driver: DriverFact | null;
  /** What the shop wants between box and vehicle. */
  readonly clearances: ClearanceSettings;
  /** "Occupants and cargo" of the vehicle's placard; null = not read. */
  readonly payloadKg: number | null;
};

/** A group of panels and the board they are cut from. */
export type BoxStock = {
  readonly partId: string;
  readonly name: string;
  /** What the panels are computed with. */
  readonly thicknessMm: number;
  /** False = as sold; a calliper reading of the real sheet is still due, so cut lists stay draft. */
  readonly isMeasured: boolean;
};

/** How much of one finish the box takes: outer wood of the faces that name it, openings taken off. */
export type FinishTotal = { readonly partId: string; readonly name: string; readonly areaM2: number };

export type BoxPlace = {
  readonly pose: Pose;
  readonly placement: Placement;
  /** Straight along the normal of the opening; the turning way in is not looked at. */
  readonly opening: OpeningCheck;
};

/** What this sheet found beside the findings of the box itself. The sentence is the screen's. */
export type BoxNote =
  /** Nobody has measured the car, so nothing is known about where it stands. */
  | { readonly code: 'no-survey' }
  /** It cannot be put where it was asked to stand. */
  | { readonly code: 'no-place'; readonly why: string }
  | { readonly code: 'thickness-nominal'; readonly stock: 'carcass' | 'baffle'; readonly name: string }
  /** The maker's sheet leaves it out; taken as the most room it can need. */
  | { readonly code: 'driver-figure-assumed'; readonly figure: 'magnet' | 'flange'; readonly mm: number }
  | { readonly code: 'payload-over'; readonly boxKg: number; readonly payloadKg: number };

export type BoxSheetResult = {
  /** Everything that was decided, defaults filled in: building it again gives `box`. */
  readonly design: BoxDesign;
  /** Panels, volumes, mass, findings, lines to draw. */
  readonly box: BoxResult;
  readonly carcass: BoxStock;
  readonly baffle: BoxStock;
  /** True while a thickness is only nominal. */
  readonly isDraft: boolean;
  readonly driver: { readonly id: string; readonly name: string; readonly count: number } | null;
  readonly finishTotals: readonly FinishTotal[];
  readonly terminalPartId: string | null;
  /** Null where nobody has measured the car, or it cannot stand there. */
  readonly place: BoxPlace | null;
  readonly payloadKg: number | null;
  readonly notes: readonly BoxNote[];
};
