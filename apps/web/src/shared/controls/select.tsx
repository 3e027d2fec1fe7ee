'use client';

import { Button } from 'react-aria-components/Button';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { Popover } from 'react-aria-components/Popover';
import { Select as AriaSelect, SelectValue } from 'react-aria-components/Select';
import { classNames } from './class-names.ts';
import styles from './field.module.css';
import { FieldLabel, FieldNotes, type FieldText } from './field-frame.tsx';
import list from './list-box.module.css';
import type { Option } from './option.ts';

export type SelectProps<Id extends string> = FieldText & {
  readonly options: readonly Option<Id>[];
  readonly value: Id | null;
  readonly onChange: (id: Id) => void;
  readonly placeholder?: string;
  readonly name?: string;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
};

/** One of a short list. More than about twelve choices: use ComboBox. */
export function Select<Id extends string>({
  label,
  hint,
  error = null,
  isOptional,
  options,
  value,
  onChange,
  placeholder = 'Choose',
  ...rest
}: SelectProps<Id>) {
  return (
    <AriaSelect
      {...rest}
      className={styles.field}
      placeholder={placeholder}
      isInvalid={error !== null}
      validationBehavior="aria"
      value={value}
      onChange={(key) => {
        const chosen = options.find((option) => option.id === key);
        if (chosen) onChange(chosen.id);
      }}
    >
      <div className={styles.cell}>
        <FieldLabel label={label} isOptional={isOptional} />
        <Button className={classNames(styles.input, list.trigger)}>
          {/* The choice by its name; its details stand in the list. */}
          <SelectValue className={list.value}>
            {({ isPlaceholder, selectedText, defaultChildren }) =>
              isPlaceholder ? defaultChildren : selectedText
            }
          </SelectValue>
          <span className={list.arrow} aria-hidden="true" />
        </Button>
      </div>
      <FieldNotes hint={hint} error={error} />
      <Popover className={list.popover} offset={2}>
        <ListBox className={list.list} items={options}>
          {(option) => <OptionLine option={option} />}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
}

export function OptionLine({ option }: { readonly option: Option }) {
  return (
    <ListBoxItem
      id={option.id}
      className={list.option}
      textValue={option.label}
      isDisabled={option.isDisabled ?? false}
    >
      <span>{option.label}</span>
      {option.detail ? <span className={list.detail}>{option.detail}</span> : null}
    </ListBoxItem>
  );
}
