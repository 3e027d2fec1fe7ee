'use client';

import { useState } from 'react';
import { Tabs } from '../../../shared/overlays/tabs.tsx';
import { openFields, PAGE_WORDS, SETTING_PAGES, type SettingPage } from '../sound-field-words.ts';
import { BoxPage } from './box-page.tsx';
import { CarPage } from './car-page.tsx';
import { DriverPage } from './driver-page.tsx';
import { PortFields } from './port-fields.tsx';
import { RadiatorFields } from './radiator-fields.tsx';
import type { SettingPageProps } from './setting-page.ts';
import styles from './settings.module.css';
import { SignalPage } from './signal-page.tsx';

/** The settings in the order in which a fabricator decides them; a page says how much of it is still open. */
export function SettingsTabs({ sheet }: SettingPageProps) {
  const [selected, setSelected] = useState<SettingPage>(sheet.input.driverId === null ? 'driver' : 'box');
  const { enclosure } = sheet.input;
  const open = openFields(sheet.outcome);
  const hasPort = enclosure !== 'closed' && enclosure !== 'infinite-baffle';
  const shown = SETTING_PAGES.filter((page) => page !== 'port' || hasPort);
  const pages = shown.map((page) => {
    const count = open.get(page) ?? 0;
    const words = page === 'port' && enclosure === 'passive-radiator' ? 'Radiators' : PAGE_WORDS[page];
    return {
      id: page,
      label: count === 0 ? words : `${words} · ${count} open`,
      content: <Page page={page} sheet={sheet} />,
    };
  });
  return (
    <div className={styles.settings} data-screen-only="">
      <Tabs
        label="Settings"
        pages={pages}
        selected={shown.includes(selected) ? selected : 'box'}
        onSelect={(id) => setSelected(SETTING_PAGES.find((page) => page === id) ?? 'box')}
      />
    </div>
  );
}

function Page({ page, sheet }: SettingPageProps & { readonly page: SettingPage }) {
  switch (page) {
    case 'driver':
      return <DriverPage sheet={sheet} />;
    case 'box':
      return <BoxPage sheet={sheet} />;
    case 'port':
      return <OpeningsPage sheet={sheet} />;
    case 'signal':
      return <SignalPage sheet={sheet} />;
    case 'car':
      return <CarPage sheet={sheet} />;
  }
}

function OpeningsPage({ sheet }: SettingPageProps) {
  const { enclosure } = sheet.input;
  if (enclosure === 'passive-radiator') return <RadiatorFields sheet={sheet} />;
  const isDual = enclosure === 'dual-tuned-bandpass';
  return (
    <div className={styles.page}>
      <PortFields sheet={sheet} field="port" title={enclosure === 'vented' ? 'Port' : 'Port in front'} />
      {isDual ? <PortFields sheet={sheet} field="rearPort" title="Port behind" /> : null}
    </div>
  );
}
