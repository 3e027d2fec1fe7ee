'use client';

import Link from 'next/link';
import { type ReactNode, useState } from 'react';
import { AppFrame } from '../../shared/shell/app-frame.tsx';
import type { Display } from '../../shared/shell/display.ts';
import { Page } from '../../shared/shell/page.tsx';
import { SAMPLE_PERSON, SAMPLE_SHOP } from './sample-shop.ts';
import styles from './style-frame.module.css';

export const STYLE_PARTS = ['sheet', 'fields', 'lists', 'marks'] as const;
export type StylePart = (typeof STYLE_PARTS)[number];

export type StyleFrameProps = {
  readonly display: Display;
  readonly part: StylePart;
  readonly index?: ReactNode;
  readonly children: ReactNode;
};

/** The style page's own frame: the real strip and providers round invented content. */
export function StyleFrame({ display, part, index, children }: StyleFrameProps) {
  const [person, setPerson] = useState(SAMPLE_PERSON);
  return (
    <AppFrame
      display={display}
      shop={SAMPLE_SHOP}
      personName={person}
      search={null}
      onSignOut={() => setPerson('nobody')}
    >
      <Page index={index}>
        <nav className={styles.parts} aria-label="Style page" data-screen-only="">
          {STYLE_PARTS.map((name) => (
            <Link
              key={name}
              href={name === 'sheet' ? '/style' : `/style/${name}`}
              aria-current={name === part ? 'page' : undefined}
            >
              {name}
            </Link>
          ))}
        </nav>
        {children}
      </Page>
    </AppFrame>
  );
}
