'use client';

import type { partInputSchemas } from '@gusset/contracts/records';
import { useFormContext } from 'react-hook-form';
import type { z } from 'zod';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormLength, FormNumber } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { PART_LABELS as L } from './part-labels.ts';

export function ProcessorFigures({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<z.input<typeof partInputSchemas.processor>>();
  return (
    <>
      <FieldSet title="Signal">
        <FieldGrid cellMinPx={180}>
          <FormNumber
            control={control}
            name="figures.inputs"
            label={L['figures.inputs']}
            min={1}
            max={64}
            digits={0}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.outputs"
            label={L['figures.outputs']}
            min={1}
            max={64}
            digits={0}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.outputVolts"
            label={L['figures.outputVolts']}
            isOptional
            unit="volt"
            min={0.1}
            max={50}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Room it takes">
        <FieldGrid cellMinPx={180}>
          <FormLength
            control={control}
            name="figures.lengthMm"
            label={L['figures.lengthMm']}
            isOptional
            maxMm={600}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.widthMm"
            label={L['figures.widthMm']}
            isOptional
            maxMm={600}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.heightMm"
            label={L['figures.heightMm']}
            isOptional
            maxMm={200}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}

export function SourceFigures({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<z.input<typeof partInputSchemas.source>>();
  return (
    <FieldSet title="Signal">
      <FieldGrid cellMinPx={220}>
        <FormNumber
          control={control}
          name="figures.preampOutputs"
          label={L['figures.preampOutputs']}
          hint="0: only speaker outputs, so a level converter is needed"
          min={0}
          max={16}
          digits={0}
          isReadOnly={isReadOnly}
        />
        <FormNumber
          control={control}
          name="figures.outputVolts"
          label={L['figures.outputVolts']}
          isOptional
          unit="volt"
          min={0.1}
          max={50}
          isReadOnly={isReadOnly}
        />
      </FieldGrid>
    </FieldSet>
  );
}
