'use client';

import type { partInputSchemas } from '@gusset/contracts/records';
import { formatLength } from '@gusset/units';
import { useFormContext } from 'react-hook-form';
import type { z } from 'zod';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { FormCheckbox, FormLength, FormNumber, FormQuantity } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { driverFindings } from './driver-findings.ts';
import { mountingDoubts } from './driver-outline.ts';
import { MOTOR_ROWS, MOUNTING_ROWS, RESONANCE_ROWS, type SheetRow } from './driver-rows.ts';
import { DriverSideView } from './driver-side-view.tsx';
import { PART_LABELS as L } from './part-labels.ts';
import { kilograms, litres } from './read-quantity.ts';

type Values = z.input<typeof partInputSchemas.driver>;

const COILS = [
  { id: '1', label: 'One' },
  { id: '2', label: 'Two' },
] as const;

export function DriverFigures({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control, watch, setValue } = useFormContext<Values>();
  const coils = watch('figures.dataSheet.coils');
  return (
    <>
      <FieldSet title="Mounting: what the baffle must leave room for">
        <FieldGrid cellMinPx={150}>
          {MOUNTING_ROWS.map(({ name, maxMm, isOptional }) => (
            <FormLength
              key={name}
              control={control}
              name={name}
              label={L[name]}
              maxMm={maxMm}
              isOptional={isOptional}
              isReadOnly={isReadOnly}
            />
          ))}
          <FormNumber
            control={control}
            name="figures.boltCount"
            label={L['figures.boltCount']}
            isOptional
            min={3}
            max={24}
            digits={0}
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
          <FormCheckbox
            control={control}
            name="figures.sideVents"
            label={L['figures.sideVents']}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Data sheet: type what it gives, leave the rest. Re, BL, Le of one coil; travels one way">
        <FieldGrid cellMinPx={150}>
          <FormSelectCoils
            value={coils ?? 1}
            onChange={(next) => setValue('figures.dataSheet.coils', next, { shouldDirty: true })}
            isReadOnly={isReadOnly}
          />
          <SheetRows rows={RESONANCE_ROWS} isReadOnly={isReadOnly} />
          <FormQuantity
            control={control}
            name="figures.dataSheet.vasLitres"
            label={L['figures.dataSheet.vasLitres']}
            unitText="L"
            parse={litres}
            isReadOnly={isReadOnly}
          />
          <SheetRows rows={MOTOR_ROWS} isReadOnly={isReadOnly} />
          <FormQuantity
            control={control}
            name="figures.dataSheet.displacementLitres"
            label={L['figures.dataSheet.displacementLitres']}
            unitText="L"
            parse={litres}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}

function SheetRows({
  rows,
  isReadOnly,
}: {
  readonly rows: readonly SheetRow[];
  readonly isReadOnly: boolean;
}) {
  const { control } = useFormContext<Values>();
  return rows.map(({ name, unit, min, max, digits }) => (
    <FormNumber
      key={name}
      control={control}
      name={name}
      label={L[name]}
      min={min}
      max={max}
      isReadOnly={isReadOnly}
      {...(unit === undefined ? {} : { unit })}
      {...(digits === undefined ? {} : { digits })}
    />
  ));
}

function FormSelectCoils({
  value,
  onChange,
  isReadOnly,
}: {
  readonly value: 1 | 2;
  readonly onChange: (coils: 1 | 2) => void;
  readonly isReadOnly: boolean;
}) {
  return (
    <Select
      label={L['figures.dataSheet.coils']}
      options={COILS}
      value={value === 2 ? '2' : '1'}
      onChange={(id) => onChange(id === '2' ? 2 : 1)}
      isDisabled={isReadOnly}
    />
  );
}

/** The driver drawn, and what its data sheet comes to while it is typed. */
export function DriverNotes() {
  const { watch } = useFormContext<Values>();
  const { shop, lengthUnit } = useDisplay();
  const figures = watch('figures');
  const findings = driverFindings(figures.dataSheet);
  const doubts = mountingDoubts(figures);
  const show = (mm: number) => formatLength(mm, { unit: lengthUnit, denominator: shop.inchDenominator });
  return (
    <>
      <DriverSideView figures={figures} show={show} />
      {doubts.map((words) => (
        <Verdict key={words} tone="check" words={words} />
      ))}
      {findings.kind === 'open' ? (
        <Verdict tone="note" words="The sheet is not whole yet">
          <p>{findings.words}.</p>
          <p>Needed: {findings.allowed}.</p>
        </Verdict>
      ) : (
        <>
          {findings.contradictions.length === 0 ? (
            <Verdict tone="pass" words="The figures agree with each other" />
          ) : (
            findings.contradictions.map(({ field, name, text, words }) => (
              <Verdict key={field} tone="check" words={`${name} ${text} does not fit the rest`}>
                <p>{words} Look at the sheet again, or measure.</p>
              </Verdict>
            ))
          )}
          {findings.derived.length === 0 ? null : (
            <Rows title="Worked out from the others">
              {findings.derived.map(({ field, name, text }) => (
                <Row key={field} label={name} tone="mark">
                  {text}
                </Row>
              ))}
            </Rows>
          )}
          {findings.takenAsZero.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </>
      )}
      <Caution>Strong magnets pull tools and pinch fingers.</Caution>
    </>
  );
}
