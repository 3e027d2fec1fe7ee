// What a line, an ink and a hatch mean. A view picks by meaning; the renderers look up how it looks.
// Widths follow ISO 128-2: one wide line, narrow lines half as wide. ISO 128-50 hatches sections at 45°.

/** Ink by meaning. On screen each is a CSS variable of the theme, on paper a fixed colour. */
export type Ink =
  | 'ink'
  | 'ink-2'
  | 'mark'
  | 'pencil'
  | 'brass'
  | 'pass'
  | 'rule'
  | 'rule-strong'
  | 'sheet'
  | 'mark-wash'
  | 'pencil-wash'
  | 'brass-wash'
  | 'pass-wash';

/**
 * outline = cut or seen edge · thin = lesser edge · hidden = edge behind material · dimension = dimension and
 * extension lines · centre = axis · construction = what the program worked out · pencil = held, failing ·
 * brass = check this · setting = glue or coat at work · hatch = section · grid = chart rule · frame = border.
 */
export type StrokeRole =
  | 'outline'
  | 'thin'
  | 'hidden'
  | 'dimension'
  | 'centre'
  | 'construction'
  | 'opening'
  | 'pencil'
  | 'brass'
  | 'pass'
  | 'setting'
  | 'hatch'
  | 'grid'
  | 'frame'
  | 'curve';

export type Stroke = {
  readonly role: StrokeRole;
  /** Dash and gap lengths, points; null = as the role has it, [] = solid. */
  readonly dashPt: readonly number[] | null;
  readonly widthPt: number | null;
};

export type Pen = { readonly ink: Ink; readonly widthPt: number; readonly dashPt: readonly number[] };

const PENS: Readonly<Record<StrokeRole, Pen>> = {
  outline: { ink: 'ink', widthPt: 1.5, dashPt: [] },
  thin: { ink: 'ink', widthPt: 0.75, dashPt: [] },
  hidden: { ink: 'ink-2', widthPt: 0.75, dashPt: [4, 2.5] },
  dimension: { ink: 'ink', widthPt: 0.7, dashPt: [] },
  centre: { ink: 'ink-2', widthPt: 0.6, dashPt: [10, 2.5, 2, 2.5] },
  construction: { ink: 'mark', widthPt: 1, dashPt: [] },
  opening: { ink: 'mark', widthPt: 1.3, dashPt: [7, 4] },
  pencil: { ink: 'pencil', widthPt: 1.1, dashPt: [] },
  brass: { ink: 'brass', widthPt: 1.1, dashPt: [] },
  pass: { ink: 'pass', widthPt: 1.1, dashPt: [] },
  setting: { ink: 'ink', widthPt: 1, dashPt: [3.5, 2.5] },
  hatch: { ink: 'ink-2', widthPt: 0.45, dashPt: [] },
  grid: { ink: 'rule', widthPt: 0.6, dashPt: [] },
  frame: { ink: 'rule-strong', widthPt: 1.2, dashPt: [] },
  curve: { ink: 'ink', widthPt: 1.4, dashPt: [] },
};

/** The pen that a stroke is drawn with. */
export function penOf(stroke: StrokeRole | Stroke): Pen {
  if (typeof stroke === 'string') return PENS[stroke];
  const pen = PENS[stroke.role];
  return { ink: pen.ink, widthPt: stroke.widthPt ?? pen.widthPt, dashPt: stroke.dashPt ?? pen.dashPt };
}

/** Black, one blue, one red and greys that survive a photocopier. */
export const PRINT_INKS: Readonly<Record<Ink, string>> = {
  ink: '#000000',
  'ink-2': '#3c4448',
  mark: '#1f4bc6',
  pencil: '#b4281f',
  brass: '#6b4e0b',
  pass: '#1a5b40',
  rule: '#b9c1be',
  'rule-strong': '#1b2126',
  sheet: '#ffffff',
  'mark-wash': '#eef2fc',
  'pencil-wash': '#faeeec',
  'brass-wash': '#f8f2e2',
  'pass-wash': '#ebf4ef',
};

/** What is hatched, not how: panel and counter-panel are neighbours in one section. */
export type HatchKind = 'panel' | 'counter-panel' | 'body' | 'soft' | 'obstruction' | 'setting' | 'offcut';

export type HatchStyle = { readonly angleRad: number; readonly pitchPt: number; readonly stroke: StrokeRole };

const EIGHTH_TURN = Math.PI / 4;

export const HATCHES: Readonly<Record<HatchKind, HatchStyle>> = {
  panel: { angleRad: EIGHTH_TURN, pitchPt: 4.2, stroke: 'hatch' },
  'counter-panel': { angleRad: -EIGHTH_TURN, pitchPt: 4.2, stroke: 'hatch' },
  body: { angleRad: -EIGHTH_TURN, pitchPt: 6, stroke: 'hatch' },
  soft: { angleRad: (Math.PI * 5) / 12, pitchPt: 8, stroke: 'hatch' },
  obstruction: { angleRad: EIGHTH_TURN, pitchPt: 5, stroke: 'hatch' },
  setting: { angleRad: EIGHTH_TURN, pitchPt: 7, stroke: 'hatch' },
  offcut: { angleRad: EIGHTH_TURN, pitchPt: 11, stroke: 'grid' },
};
