'use client';

import type { partInputSchemas } from '@gusset/contracts/records';
import { formatLength, formatMass } from '@gusset/units';
import { useFormContext } from 'react-hook-form';
import type { z } from 'zod';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { FormCheckbox, FormLength, FormNumber, FormSelect } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { PART_LABELS as L } from './part-labels.ts';
import { sheetFacts } from './sheet-facts.ts';

type Values = z.input<typeof partInputSchemas.sheet>;

const MATERIALS = [
  { id: 'mdf', label: 'MDF' },
  { id: 'light-mdf', label: 'Light MDF' },
  { id: 'birch-ply', label: 'Birch plywood' },
  { id: 'ply', label: 'Other plywood' },
  { id: 'other', label: 'Another board' },
] as const;

const GRAINS = [
  { id: 'none', label: 'None' },
  { id: 'length', label: 'The length' },
  { id: 'width', label: 'The width' },
] as const;

export function SheetFigures({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<Values>();
  return (
    <>
      <FieldSet title="Board">
        <FieldGrid cellMinPx={180}>
          <FormSelect
            control={control}
            name="figures.material"
            label={L['figures.material']}
            options={MATERIALS}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.lengthMm"
            label={L['figures.lengthMm']}
            maxMm={5_000}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.widthMm"
            label={L['figures.widthMm']}
            maxMm={5_000}
            isReadOnly={isReadOnly}
          />
          <FormSelect
            control={control}
            name="figures.grain"
            label={L['figures.grain']}
            options={GRAINS}
            isReadOnly={isReadOnly}
          />
          <FormNumber
            control={control}
            name="figures.densityKgPerM3"
            label={L['figures.densityKgPerM3']}
            hint="MDF about 740, birch about 680"
            min={50}
            max={3_000}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Thickness">
        <FieldGrid cellMinPx={240}>
          <FormLength
            control={control}
            name="figures.nominalThicknessMm"
            label={L['figures.nominalThicknessMm']}
            hint="As it is sold"
            maxMm={100}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.measuredThicknessMm"
            label={L['figures.measuredThicknessMm']}
            isOptional
            hint="Measure a cut edge away from the factory edge, at three places; take the middle one"
            maxMm={100}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Dust and fumes">
        <FieldGrid cellMinPx={240}>
          <FormText
            control={control}
            name="figures.emissionClass"
            label={L['figures.emissionClass']}
            isOptional
            hint="As printed on the board, such as E1"
            isReadOnly={isReadOnly}
          />
          <FormCheckbox
            control={control}
            name="figures.labelSeen"
            label={L['figures.labelSeen']}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        <Caution>Wood dust harms lungs: extraction at the machine and a mask.</Caution>
      </FieldSet>
    </>
  );
}

/** What the board comes to: how far it is from its name, what it weighs. */
export function SheetNotes() {
  const { watch } = useFormContext<Values>();
  const { shop, lengthUnit } = useDisplay();
  const facts = sheetFacts(watch('figures'));
  const show = (mm: number) => formatLength(mm, { unit: lengthUnit, denominator: shop.inchDenominator });
  return (
    <>
      {facts.offMm === null ? (
        <Verdict tone="check" words="Not measured yet">
          <p>Cut lists on this board stay drafts until its real thickness is known.</p>
        </Verdict>
      ) : (
        <Verdict tone="pass" words={facts.offMm === 0 ? 'As thick as its name' : 'Measured'}>
          {facts.offMm === 0 ? null : (
            <p>
              {show(Math.abs(facts.offMm))} {facts.offMm < 0 ? 'thinner' : 'thicker'} than its name. Panels
              are cut by the reading.
            </p>
          )}
        </Verdict>
      )}
      <Rows title="One sheet">
        <Row label="Area">{facts.areaM2 === null ? '–' : `${facts.areaM2.toFixed(2)} m²`}</Row>
        <Row label="Mass">{facts.massKg === null ? '–' : formatMass(facts.massKg, 'metric')}</Row>
      </Rows>
      {facts.needsTwo ? <Caution>Two people carry this sheet.</Caution> : null}
    </>
  );
}
