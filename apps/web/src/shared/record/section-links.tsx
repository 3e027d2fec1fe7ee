'use client';

import Link from 'next/link';
import { useEffect, useRef } from 'react';
import styles from './section-links.module.css';

export type Section = { readonly id: string; readonly label: string; readonly href: string };

export type SectionLinksProps = {
  /** What they divide: "Kinds of part". */
  readonly label: string;
  readonly here: string;
  readonly sections: readonly Section[];
};

/** Pages of one thing, side by side: each has its own address. Scrolls sideways on phones. */
export function SectionLinks({ label, here, sections }: SectionLinksProps) {
  const nav = useRef<HTMLElement>(null);
  // On a phone the page that is open may stand past the edge.
  useEffect(() => {
    const current = nav.current?.querySelector('[aria-current]');
    current?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }, []);
  return (
    <nav ref={nav} aria-label={label} className={styles.sections} data-screen-only="">
      {sections.map((section) => (
        <Link
          key={section.id}
          href={section.href}
          prefetch={false}
          className={styles.section}
          aria-current={section.id === here ? 'page' : undefined}
        >
          {section.label}
        </Link>
      ))}
    </nav>
  );
}
