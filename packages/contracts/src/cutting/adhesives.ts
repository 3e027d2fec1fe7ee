// Glues by what their makers commonly state at 20 °C and half-damp air. The tin in use comes first. No schema here:
// screens read these without loading any.

/** A glue as its tin says it at 20 °C. */
export type Adhesive = {
  readonly name: string;
  readonly openMinutes: number;
  readonly clampMinutes: number;
  /** Until it may be machined or carried. */
  readonly handleMinutes: number;
  /** Below this it does not set as it should. */
  readonly coldestC: number;
};

export const ADHESIVE_KINDS = ['pva', 'polyurethane', 'construction'] as const;
export type AdhesiveKind = (typeof ADHESIVE_KINDS)[number];

/** The careful end of each usual range: shortest open time, longest clamping. */
export const USUAL_ADHESIVES: Readonly<Record<AdhesiveKind, Adhesive>> = {
  pva: { name: 'PVA wood glue', openMinutes: 5, clampMinutes: 60, handleMinutes: 120, coldestC: 10 },
  polyurethane: {
    name: 'Polyurethane wood glue',
    openMinutes: 10,
    clampMinutes: 240,
    handleMinutes: 360,
    coldestC: 10,
  },
  construction: {
    name: 'Polyurethane construction adhesive',
    openMinutes: 10,
    clampMinutes: 0,
    handleMinutes: 1_440,
    coldestC: 5,
  },
};
