import Link from 'next/link';
import type { ReactNode } from 'react';
import styles from './button.module.css';
import type { ButtonLook } from './button.tsx';
import { classNames } from './class-names.ts';

export type LinkButtonProps = {
  /** From `paths`, never a literal. */
  readonly href: string;
  readonly children: ReactNode;
  readonly look?: ButtonLook;
  readonly isWide?: boolean;
  /** For files the API makes (PDF, CSV, DXF): an ordinary download, not a navigation. */
  readonly isDownload?: boolean;
};

/** Goes somewhere, so it is a link; it only looks like a button. */
export function LinkButton({
  href,
  children,
  look = 'plain',
  isWide = false,
  isDownload = false,
}: LinkButtonProps) {
  const className = classNames(styles.button, look !== 'plain' && styles[look], isWide && styles.wide);
  if (isDownload) {
    return (
      <a href={href} className={className} download>
        {children}
      </a>
    );
  }
  return (
    <Link href={href} className={className}>
      {children}
    </Link>
  );
}
