// How this device shows things. Kept in cookies, so that the server draws the first frame right.

export const THEMES = ['device', 'day', 'night'] as const;
export type Theme = (typeof THEMES)[number];

export const LENGTH_UNITS = ['mm', 'in'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

export type Display = {
  readonly theme: Theme;
  /** The device's own choice; null follows the shop's unit. */
  readonly unit: LengthUnit | null;
  /** Larger targets and figures for gloves and dust. */
  readonly bench: boolean;
};

export const DISPLAY_COOKIES = {
  theme: 'gusset-theme',
  unit: 'gusset-unit',
  bench: 'gusset-bench',
} as const;

const YEAR_SECONDS = 31_536_000;

/** Reads what `get` finds under the cookie names; anything unknown falls back to the device's scheme. */
export function readDisplay(get: (cookieName: string) => string | undefined): Display {
  const theme = get(DISPLAY_COOKIES.theme);
  const unit = get(DISPLAY_COOKIES.unit);
  return {
    theme: THEMES.find((known) => known === theme) ?? 'device',
    unit: LENGTH_UNITS.find((known) => known === unit) ?? null,
    bench: get(DISPLAY_COOKIES.bench) === 'on',
  };
}

/** One `document.cookie` line per setting. */
export function displayCookies(display: Display): readonly string[] {
  const keep = `Path=/; Max-Age=${YEAR_SECONDS}; SameSite=Lax`;
  return [
    `${DISPLAY_COOKIES.theme}=${display.theme}; ${keep}`,
    `${DISPLAY_COOKIES.unit}=${display.unit ?? ''}; ${keep}`,
    `${DISPLAY_COOKIES.bench}=${display.bench ? 'on' : ''}; ${keep}`,
  ];
}
