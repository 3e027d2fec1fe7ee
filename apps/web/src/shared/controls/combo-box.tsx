'use client';

import { Button } from 'react-aria-components/Button';
import { ComboBox as AriaComboBox } from 'react-aria-components/ComboBox';
import { Input } from 'react-aria-components/Input';
import { ListBox } from 'react-aria-components/ListBox';
import { Popover } from 'react-aria-components/Popover';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';
import list from './list-box.module.css';
import type { Option } from './option.ts';
import { OptionLine } from './select.tsx';

export type ComboBoxProps<Id extends string> = FieldText & {
  readonly options: readonly Option<Id>[];
  readonly value: Id | null;
  /** Null when the field is emptied. */
  readonly onChange: (id: Id | null) => void;
  /** Given for lists that the server searches: `options` then are its answers, and nothing is filtered here. */
  readonly onSearch?: (text: string) => void;
  readonly isSearching?: boolean;
  readonly placeholder?: string;
  readonly noMatch?: string;
  readonly name?: string;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
};

const acceptAll = () => true;

/** One of a long list, found by typing. */
export function ComboBox<Id extends string>({
  label,
  hint,
  error = null,
  isOptional,
  options,
  value,
  onChange,
  onSearch,
  isSearching = false,
  placeholder,
  noMatch = 'Nothing by that name',
  ...rest
}: ComboBoxProps<Id>) {
  return (
    <AriaComboBox
      {...rest}
      className={styles.field}
      isInvalid={error !== null}
      validationBehavior="aria"
      defaultItems={onSearch ? undefined : options}
      items={onSearch ? options : undefined}
      defaultFilter={onSearch ? acceptAll : undefined}
      onInputChange={onSearch}
      allowsEmptyCollection
      menuTrigger="focus"
      value={value}
      onChange={(key) => onChange(options.find((option) => option.id === key)?.id ?? null)}
    >
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <Input className={styles.input} placeholder={placeholder} />
        <Button className={styles.side} aria-label={`All for ${label}`}>
          <span className={list.arrow} aria-hidden="true" />
        </Button>
      </div>
      <FieldNotes hint={hint} error={error} />
      <Popover className={list.popover} offset={2}>
        <ListBox<Option<Id>>
          className={list.list}
          renderEmptyState={() => <p className={list.none}>{isSearching ? 'Looking…' : noMatch}</p>}
        >
          {(option) => <OptionLine option={option} />}
        </ListBox>
      </Popover>
    </AriaComboBox>
  );
}
