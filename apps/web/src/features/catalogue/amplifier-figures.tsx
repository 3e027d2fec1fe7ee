'use client';

import type { partInputSchemas } from '@gusset/contracts/records';
import { useFieldArray, useFormContext } from 'react-hook-form';
import type { z } from 'zod';
import { Button } from '../../shared/controls/button.tsx';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { FormLength, FormNumber, FormQuantity, FormSelect } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import styles from './figures.module.css';
import { PART_LABELS as L } from './part-labels.ts';
import { kilograms } from './read-quantity.ts';

type Values = z.input<typeof partInputSchemas.amplifier>;

const BASES = [
  { id: 'CTA-2006', label: 'CTA-2006', detail: '14.4 V, 1 % distortion' },
  { id: 'other', label: 'Another standard' },
  { id: 'unknown', label: 'Not stated' },
] as const;

const CLASSES = (['A', 'AB', 'D', 'other'] as const).map((id) => ({
  id,
  label: id === 'other' ? 'Another' : `Class ${id}`,
}));

const MOST_RATINGS = 12;

export function AmplifierFigures({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<Values>();
  const ratings = useFieldArray({ control, name: 'figures.ratings' });
  return (
    <>
      <FieldSet title="Rated power of one channel, by load">
        <ul className={styles.lines}>
          {ratings.fields.map((rating, index) => (
            <li key={rating.id} className={styles.line}>
              <FieldGrid cellMinPx={140}>
                <FormNumber
                  control={control}
                  name={`figures.ratings.${index}.loadOhm`}
                  label="At a load of"
                  unit="ohm"
                  min={0.25}
                  max={64}
                  isReadOnly={isReadOnly}
                />
                <FormNumber
                  control={control}
                  name={`figures.ratings.${index}.watts`}
                  label="It gives"
                  unit="watt"
                  min={0.1}
                  max={50_000}
                  isReadOnly={isReadOnly}
                />
              </FieldGrid>
              {isReadOnly || ratings.fields.length === 1 ? null : (
                <Button look="quiet" onPress={() => ratings.remove(index)}>
                  {`Remove line ${index + 1}`}
                </Button>
              )}
            </li>
          ))}
        </ul>
        {isReadOnly || ratings.fields.length >= MOST_RATINGS ? null : (
          <div>
            <Button onPress={() => ratings.append({ loadOhm: 2, watts: 100 })}>Add a load</Button>
          </div>
        )}
      </FieldSet>
      <FieldSet title="Channels and loads">
        <FieldGrid cellMinPx={180}>
          <FormNumber
            control={control}
            name="figures.channels"
            label={L['figures.channels']}
            min={1}
            max={16}
            digits={0}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.minimumLoadOhm"
            label={L['figures.minimumLoadOhm']}
            unit="ohm"
            min={0.25}
            max={64}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.bridgedMinimumLoadOhm"
            label={L['figures.bridgedMinimumLoadOhm']}
            isOptional
            unit="ohm"
            min={0.25}
            max={64}
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="figures.ratingBasis"
            label={L['figures.ratingBasis']}
            options={BASES}
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="figures.amplifierClass"
            label={L['figures.amplifierClass']}
            options={CLASSES}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.fuseTotalA"
            label={L['figures.fuseTotalA']}
            isOptional
            hint="Added up, as printed at the sockets"
            unit="amp"
            min={0.5}
            max={2_000}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        <Caution>An amplifier’s cable is fused for the cable, close to the battery.</Caution>
      </FieldSet>
      <FieldSet title="Room it takes">
        <FieldGrid cellMinPx={160}>
          <FormLength
            control={control}
            name="figures.lengthMm"
            label={L['figures.lengthMm']}
            isOptional
            maxMm={1_200}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.widthMm"
            label={L['figures.widthMm']}
            isOptional
            maxMm={1_200}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.heightMm"
            label={L['figures.heightMm']}
            isOptional
            maxMm={400}
            isReadOnly={isReadOnly}
          />
          <FormQuantity
            control={control}
            name="figures.massKg"
            label={L['figures.massKg']}
            isOptional
            unitText="kg"
            parse={kilograms}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}
