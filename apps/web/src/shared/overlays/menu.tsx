'use client';

import type { ReactNode } from 'react';
import { Header } from 'react-aria-components/Header';
import { Menu as AriaMenu, MenuItem, MenuSection, MenuTrigger } from 'react-aria-components/Menu';
import { Popover } from 'react-aria-components/Popover';
import { Button, type ButtonLook } from '../controls/button.tsx';
import { classNames } from '../controls/class-names.ts';
import styles from './menu.module.css';

export type MenuAct = {
  readonly id: string;
  readonly label: string;
  readonly detail?: string;
  readonly removes?: boolean;
  readonly isDisabled?: boolean;
} & (
  | { readonly onAct: () => void; readonly href?: never }
  | { readonly href: string; readonly onAct?: never }
);

export type MenuGroup = { readonly title?: string; readonly acts: readonly MenuAct[] };

export type MenuProps = {
  /** The words on the button that opens it. */
  readonly label: ReactNode;
  /** What a screen reader calls it where the words alone don't say. */
  readonly name?: string;
  readonly groups: readonly MenuGroup[];
  readonly look?: ButtonLook;
};

export function Menu({ label, name, groups, look = 'plain' }: MenuProps) {
  return (
    <MenuTrigger>
      <Button look={look} aria-label={name}>
        {label}
        <span className={styles.arrow} aria-hidden="true" />
      </Button>
      <Popover className={styles.popover} offset={2}>
        <AriaMenu className={styles.menu}>
          {groups.map((group, index) => (
            <MenuSection
              key={group.title ?? index}
              className={styles.section}
              aria-label={group.title ?? 'Acts'}
            >
              {group.title ? (
                <Header className={classNames('caption', styles.title)}>{group.title}</Header>
              ) : null}
              {group.acts.map((act) => (
                <MenuItem
                  key={act.id}
                  id={act.id}
                  textValue={act.label}
                  className={classNames(styles.act, act.removes && styles.removes)}
                  isDisabled={act.isDisabled}
                  href={act.href}
                  onAction={act.onAct}
                >
                  <span>{act.label}</span>
                  {act.detail ? <span className={styles.detail}>{act.detail}</span> : null}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </AriaMenu>
      </Popover>
    </MenuTrigger>
  );
}
