'use client';

import type { partInputSchemas } from '@gusset/contracts/records';
import { useFormContext } from 'react-hook-form';
import type { z } from 'zod';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import {
  FormCheckbox,
  FormLength,
  FormNumber,
  FormPercent,
  FormSelect,
} from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { PART_LABELS as L } from './part-labels.ts';

type FiguresProps = { readonly isReadOnly: boolean };

const FINISHES = [
  { id: 'carpet', label: 'Carpet' },
  { id: 'vinyl', label: 'Vinyl' },
  { id: 'coating', label: 'Textured coating' },
  { id: 'paint', label: 'Paint' },
  { id: 'other', label: 'Another finish' },
] as const;

export function FinishFigures({ isReadOnly }: FiguresProps) {
  const { control, watch } = useFormContext<z.input<typeof partInputSchemas.finish>>();
  const finish = watch('figures.finish');
  const isWet = finish === 'coating' || finish === 'paint';
  return (
    <>
      <FieldSet title="Finish">
        <FieldGrid cellMinPx={190}>
          <FormSelect
            control={control}
            name="figures.finish"
            label={L['figures.finish']}
            options={FINISHES}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="figures.thicknessMm"
            label={L['figures.thicknessMm']}
            hint="The box grows by this on each finished face"
            maxMm={20}
            isReadOnly={isReadOnly}
          />
          <FormPercent
            control={control}
            name="figures.wasteBasisPoints"
            label={L['figures.wasteBasisPoints']}
            maxPercent={100}
            isReadOnly={isReadOnly}
          />
          <FormCheckbox
            control={control}
            name="figures.flammabilityStated"
            label={L['figures.flammabilityStated']}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
      <FieldSet title={isWet ? 'Coats' : 'From the roll'}>
        <FieldGrid cellMinPx={190}>
          {isWet ? (
            <>
              <FormNumber
                control={control}
                name="figures.coverageM2PerLitre"
                label={L['figures.coverageM2PerLitre']}
                isOptional
                min={0.1}
                max={50}
                isReadOnly={isReadOnly}
              />
              <FormNumber
                control={control}
                name="figures.coats"
                label={L['figures.coats']}
                min={1}
                max={10}
                digits={0}
                isReadOnly={isReadOnly}
              />
              <FormNumber
                control={control}
                name="figures.recoatHours"
                label={L['figures.recoatHours']}
                min={0}
                max={240}
                isReadOnly={isReadOnly}
              />
            </>
          ) : (
            <FormLength
              control={control}
              name="figures.rollWidthMm"
              label={L['figures.rollWidthMm']}
              isOptional
              maxMm={3_000}
              isReadOnly={isReadOnly}
            />
          )}
          <FormNumber
            control={control}
            name="figures.handleHours"
            label={L['figures.handleHours']}
            min={0}
            max={720}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        {isWet ? (
          <Caution>Vapours burn and harm: air the room, wear the mask the maker names.</Caution>
        ) : null}
      </FieldSet>
    </>
  );
}

const HARDWARE_USES = [
  { id: 'screw', label: 'Screw' },
  { id: 'bolt', label: 'Bolt' },
  { id: 'insert', label: 'Threaded insert' },
  { id: 't-nut', label: 'T-nut' },
  { id: 'terminal', label: 'Terminal' },
  { id: 'grille', label: 'Grille' },
  { id: 'gasket', label: 'Gasket' },
  { id: 'bracket', label: 'Bracket' },
  { id: 'cable', label: 'Cable' },
  { id: 'fuse', label: 'Fuse' },
  { id: 'connector', label: 'Connector' },
  { id: 'other', label: 'Something else' },
] as const;

const CONDUCTORS = [
  { id: 'copper', label: 'Copper' },
  { id: 'copper-clad-aluminium', label: 'Copper-clad aluminium' },
  { id: 'unknown', label: 'Not known' },
] as const;

export function HardwareFigures({ isReadOnly }: FiguresProps) {
  const { control, watch } = useFormContext<z.input<typeof partInputSchemas.hardware>>();
  const isCable = watch('figures.use') === 'cable';
  return (
    <FieldSet title="Hardware">
      <FieldGrid cellMinPx={190}>
        <FormSelect
          control={control}
          name="figures.use"
          label={L['figures.use']}
          options={HARDWARE_USES}
          isReadOnly={isReadOnly}
        />
        <FormText
          control={control}
          name="figures.size"
          label={L['figures.size']}
          isOptional
          hint="As the shop calls it, such as M5 x 30"
          isReadOnly={isReadOnly}
        />
        <FormNumber
          control={control}
          name="figures.packQuantity"
          label={L['figures.packQuantity']}
          min={1}
          max={10_000}
          digits={0}
          isReadOnly={isReadOnly}
        />
        {isCable ? (
          <>
            <FormSelect
              control={control}
              name="figures.conductor"
              label={L['figures.conductor']}
              hint="A fuse is chosen only once the metal is known"
              options={CONDUCTORS}
              isReadOnly={isReadOnly}
            />
            <FormNumber
              control={control}
              name="figures.areaMm2"
              label={L['figures.areaMm2']}
              isOptional
              min={0.1}
              max={200}
              isReadOnly={isReadOnly}
            />
          </>
        ) : null}
      </FieldGrid>
    </FieldSet>
  );
}

const SUPPLY_USES = [
  { id: 'glue', label: 'Glue' },
  { id: 'contact-adhesive', label: 'Contact adhesive' },
  { id: 'sealant', label: 'Sealant' },
  { id: 'lining', label: 'Lining' },
  { id: 'abrasive', label: 'Abrasive' },
  { id: 'other', label: 'Something else' },
] as const;

export function SupplyFigures({ isReadOnly }: FiguresProps) {
  const { control, watch } = useFormContext<z.input<typeof partInputSchemas.supply>>();
  const use = watch('figures.use');
  const isPoured = use === 'glue' || use === 'contact-adhesive' || use === 'sealant';
  return (
    <FieldSet title="Use">
      <FieldGrid cellMinPx={200}>
        <FormSelect
          control={control}
          name="figures.use"
          label={L['figures.use']}
          options={SUPPLY_USES}
          isReadOnly={isReadOnly}
        />
        {isPoured ? (
          <>
            <FormNumber
              control={control}
              name="figures.usePerUnit"
              label={use === 'sealant' ? 'Litres per metre of seam' : 'Litres per square metre'}
              isOptional
              hint="Empty: counted by hand"
              min={0.001}
              max={50}
              digits={4}
              isReadOnly={isReadOnly}
            />
            <FormNumber
              control={control}
              name="figures.clampMinutes"
              label={L['figures.clampMinutes']}
              isOptional
              unit="minute"
              min={0}
              max={10_080}
              digits={0}
              isReadOnly={isReadOnly}
            />
            <FormNumber
              control={control}
              name="figures.cureMinutes"
              label={L['figures.cureMinutes']}
              isOptional
              hint="At 20 °C; the plan waits longer in a cold shop"
              unit="minute"
              min={0}
              max={20_160}
              digits={0}
              isReadOnly={isReadOnly}
            />
            <FormNumber
              control={control}
              name="figures.minimumTemperatureC"
              label={L['figures.minimumTemperatureC']}
              isOptional
              min={-20}
              max={40}
              isReadOnly={isReadOnly}
            />
          </>
        ) : null}
      </FieldGrid>
    </FieldSet>
  );
}
