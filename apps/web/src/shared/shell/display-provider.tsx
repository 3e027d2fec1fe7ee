'use client';

import { createContext, type ReactNode, use, useCallback, useMemo, useState } from 'react';
import { I18nProvider } from 'react-aria-components/I18nProvider';
import { type Display, displayCookies, type LengthUnit } from './display.ts';
import type { ShopFacts } from './shop-facts.ts';

export type DisplayControl = Display & {
  readonly shop: ShopFacts;
  /** The unit lengths are shown in: the device's choice, else the shop's. */
  readonly lengthUnit: LengthUnit;
  readonly change: (next: Partial<Display>) => void;
};

const DisplayContext = createContext<DisplayControl | null>(null);

const applyToPage = (display: Display): void => {
  const { dataset } = document.documentElement;
  if (display.theme === 'device') delete dataset.theme;
  else dataset.theme = display.theme;
  if (display.bench) dataset.bench = 'on';
  else delete dataset.bench;
};

export type DisplayProviderProps = {
  readonly initial: Display;
  readonly shop: ShopFacts;
  readonly children: ReactNode;
};

export function DisplayProvider({ initial, shop, children }: DisplayProviderProps) {
  const [display, setDisplay] = useState(initial);

  const change = useCallback(
    (next: Partial<Display>) => {
      const changed = { ...display, ...next };
      // biome-ignore lint/suspicious/noDocumentCookie: the server must read the choice before the first paint.
      for (const line of displayCookies(changed)) document.cookie = line;
      applyToPage(changed);
      setDisplay(changed);
    },
    [display],
  );

  const control = useMemo(
    () => ({ ...display, shop, lengthUnit: display.unit ?? shop.lengthUnit, change }),
    [display, shop, change],
  );
  return (
    <DisplayContext value={control}>
      <I18nProvider locale={shop.locale}>{children}</I18nProvider>
    </DisplayContext>
  );
}

/** Theme, units and bench mode of this device, and the shop's own settings. */
export function useDisplay(): DisplayControl {
  const control = use(DisplayContext);
  if (!control) throw new Error('useDisplay needs a DisplayProvider above it.');
  return control;
}
