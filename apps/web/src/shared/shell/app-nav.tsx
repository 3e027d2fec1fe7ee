'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useState } from 'react';
import { Button } from 'react-aria-components/Button';
import { classNames } from '../controls/class-names.ts';
import { Dialog } from '../overlays/dialog.tsx';
import { Menu } from '../overlays/menu.tsx';
import { paths } from '../paths.ts';
import styles from './app-nav.module.css';
import { THEMES, type Theme } from './display.ts';
import { useDisplay } from './display-provider.tsx';
import { APP_PLACES } from './places.ts';
import { SearchDialog, type SearchSource } from './search-dialog.tsx';
import { useShortcut, useShortcutList } from './shortcuts.tsx';
import { UnitsSwitch } from './units-switch.tsx';

const PLACES = [
  { id: 'today', title: 'Today in the bays', short: 'Today', href: paths.today(), root: '/' },
  { id: 'jobs', title: 'Jobs', short: 'Jobs', href: paths.jobs(), root: '/jobs' },
  { id: 'customers', title: 'Customers', short: 'Customers', href: paths.customers(), root: '/customers' },
  { id: 'vehicles', title: 'Vehicles', short: 'Vehicles', href: paths.vehicles(), root: '/vehicles' },
  { id: 'parts', title: 'Parts', short: 'Parts', href: paths.catalogue(), root: '/catalogue' },
  { id: 'shop', title: 'Shop', short: 'Shop', href: paths.shop(), root: '/shop' },
] as const;

const THEME_WORDS: Readonly<Record<Theme, string>> = {
  device: 'As this device',
  day: 'Day',
  night: 'Night shift',
};

const isHere = (pathname: string, root: string): boolean =>
  root === '/' ? pathname === '/' : pathname === root || pathname.startsWith(`${root}/`);

export type AppNavProps = {
  readonly shopName: string;
  readonly personName: string;
  readonly search: SearchSource | null;
  readonly onSignOut: () => void;
};

/** The strip over every page: whose shop, where one is, search, units, who am I. */
export function AppNav({ shopName, personName, search, onSignOut }: AppNavProps) {
  const pathname = usePathname();
  const [open, setOpen] = useState<'search' | 'places' | null>(null);
  const close = () => setOpen(null);
  const openSearch = () => setOpen('search');
  useShortcut('/', 'Search', openSearch);
  useShortcut('mod+k', 'Search, also while typing', openSearch);

  return (
    <header className={styles.strip} data-screen-only="">
      <Link prefetch={false} href={paths.today()} className={styles.brand}>
        <span className={styles.mark}>Gusset</span>
        <span className={styles.shop}>{shopName}</span>
      </Link>
      <nav className={styles.places} aria-label="Shop">
        {PLACES.map(({ id, title, href, root }) => (
          <Link
            prefetch={false}
            key={id}
            href={href}
            className={styles.place}
            aria-current={isHere(pathname, root) ? 'page' : undefined}
          >
            {title}
          </Link>
        ))}
      </nav>
      <div className={styles.tools}>
        <Button
          className={styles.tool}
          onPress={openSearch}
          aria-label="Search everything"
          aria-keyshortcuts="/"
        >
          <span>Search</span>
          <kbd className={styles.key}>/</kbd>
        </Button>
        <div className={styles.units}>
          <UnitsSwitch />
        </div>
        <WhoMenu personName={personName} onSignOut={onSignOut} />
        <Button className={classNames(styles.tool, styles.menuButton)} onPress={() => setOpen('places')}>
          Menu
        </Button>
      </div>
      <SearchDialog isOpen={open === 'search'} onClose={close} places={APP_PLACES} source={search} />
      <Dialog title={shopName} isOpen={open === 'places'} onClose={close}>
        <nav aria-label="Shop" className={styles.list}>
          {PLACES.map(({ id, title, href, root }) => (
            <Link
              prefetch={false}
              key={id}
              href={href}
              onClick={close}
              aria-current={isHere(pathname, root) ? 'page' : undefined}
            >
              {title}
            </Link>
          ))}
        </nav>
        <div className={styles.menuUnits}>
          <span className="caption">Lengths in</span>
          <UnitsSwitch />
        </div>
      </Dialog>
    </header>
  );
}

type WhoMenuProps = Pick<AppNavProps, 'personName' | 'onSignOut'>;

function WhoMenu({ personName, onSignOut }: WhoMenuProps) {
  const { theme, bench, change } = useDisplay();
  const showKeys = useShortcutList();
  return (
    <Menu
      look="quiet"
      name={`${personName}: this device and account`}
      label={<span className={styles.who}>{personName}</span>}
      groups={[
        {
          title: 'This device',
          acts: [
            ...THEMES.map((choice) => ({
              id: choice,
              label: THEME_WORDS[choice],
              detail: choice === theme ? 'on' : '',
              onAct: () => change({ theme: choice }),
            })),
            {
              id: 'bench',
              label: 'Bench mode: larger targets',
              detail: bench ? 'on' : 'off',
              onAct: () => change({ bench: !bench }),
            },
            { id: 'keys', label: 'Keyboard shortcuts', detail: '?', onAct: showKeys },
          ],
        },
        {
          title: personName,
          acts: [
            { id: 'account', label: 'My account', href: paths.shop('account') },
            { id: 'calendar', label: 'My calendar', href: paths.shop('calendar') },
            { id: 'sign-out', label: 'Sign out', onAct: onSignOut },
          ],
        },
      ]}
    />
  );
}
