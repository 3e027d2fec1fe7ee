'use client';

import type { Ref } from 'react';
import { Button } from 'react-aria-components/Button';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { SearchField } from 'react-aria-components/SearchField';
import { classNames } from './class-names.ts';
import field from './field.module.css';
import styles from './search-box.module.css';

export type SearchBoxProps = {
  /** What is searched: "Search jobs". Seen by screen readers, and by everyone as the placeholder. */
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onSubmit?: (text: string) => void;
  readonly autoFocus?: boolean;
  readonly inputRef?: Ref<HTMLInputElement>;
};

export function SearchBox({ label, inputRef, ...rest }: SearchBoxProps) {
  return (
    <SearchField {...rest} className={classNames(field.field, styles.search)}>
      <Label className="unseen">{label}</Label>
      <div className={classNames(field.cell, styles.cell)}>
        <Input
          ref={inputRef}
          className={classNames(field.input, styles.input)}
          placeholder={label}
          enterKeyHint="search"
        />
        <Button className={classNames(field.side, styles.clear)}>Clear</Button>
      </div>
    </SearchField>
  );
}
