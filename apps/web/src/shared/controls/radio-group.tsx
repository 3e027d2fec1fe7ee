'use client';

import { FieldError } from 'react-aria-components/FieldError';
import { Label } from 'react-aria-components/Label';
import { RadioGroup as AriaRadioGroup, Radio } from 'react-aria-components/RadioGroup';
import { Text } from 'react-aria-components/Text';
import styles from './choice.module.css';
import { classNames } from './class-names.ts';
import field from './field.module.css';
import type { FieldText } from './field-frame.tsx';
import type { Option } from './option.ts';

export type RadioGroupProps<Id extends string> = FieldText & {
  readonly options: readonly Option<Id>[];
  readonly value: Id | null;
  readonly onChange: (id: Id) => void;
  readonly isRow?: boolean;
  readonly isDisabled?: boolean;
  readonly isRequired?: boolean;
  readonly name?: string;
};

/** One of two to five, all in sight. */
export function RadioGroup<Id extends string>({
  label,
  hint,
  error = null,
  isOptional,
  options,
  onChange,
  isRow = false,
  ...rest
}: RadioGroupProps<Id>) {
  return (
    <AriaRadioGroup
      {...rest}
      className={classNames(styles.group, isRow && styles.isRow)}
      isInvalid={error !== null}
      validationBehavior="aria"
      onChange={(key) => {
        const chosen = options.find((option) => option.id === key);
        if (chosen) onChange(chosen.id);
      }}
    >
      <Label className={styles.caption}>
        {label}
        {isOptional ? <span className={field.optional}> · optional</span> : null}
      </Label>
      <div className={styles.choices}>
        {options.map((option) => (
          <Radio
            key={option.id}
            value={option.id}
            isDisabled={option.isDisabled ?? false}
            className={styles.choice}
          >
            <span className={classNames(styles.mark, styles.round)} />
            <span className={styles.words}>
              <span>{option.label}</span>
              {option.detail ? <span className={styles.detail}>{option.detail}</span> : null}
            </span>
          </Radio>
        ))}
      </div>
      {hint && !error ? (
        <Text slot="description" className={field.hint}>
          {hint}
        </Text>
      ) : null}
      <FieldError className={field.error}>{error}</FieldError>
    </AriaRadioGroup>
  );
}
