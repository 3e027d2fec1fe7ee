'use client';

import type { ReactNode } from 'react';
import { Tabs as AriaTabs, Tab, TabList, TabPanel } from 'react-aria-components/Tabs';
import styles from './tabs.module.css';

export type TabPage = { readonly id: string; readonly label: string; readonly content: ReactNode };

export type TabsProps = {
  /** What the tabs divide: "Views of the box". */
  readonly label: string;
  readonly pages: readonly TabPage[];
  readonly selected?: string;
  readonly onSelect?: (id: string) => void;
};

/** Views of one thing. Different things are different sheets with their own address. */
export function Tabs({ label, pages, selected, onSelect }: TabsProps) {
  return (
    <AriaTabs
      className={styles.tabs}
      selectedKey={selected}
      onSelectionChange={(key) => onSelect?.(String(key))}
    >
      <TabList aria-label={label} className={styles.list}>
        {pages.map(({ id, label: words }) => (
          <Tab key={id} id={id} className={styles.tab}>
            {words}
          </Tab>
        ))}
      </TabList>
      {pages.map(({ id, content }) => (
        <TabPanel key={id} id={id} className={styles.panel}>
          {content}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
