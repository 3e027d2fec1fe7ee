'use client';

import { isRefusal, parseAngle, parseMinutes, parseTemperature } from '@gusset/units';
import { useFormContext } from 'react-hook-form';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { Caution } from '../../shared/marks/caution.tsx';
import { FormLength, FormQuantity } from '../../shared/record/form-fields.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import type { ShopFormValues } from './shop-form.ts';

const GAPS = [
  { name: 'settings.clearances.sideMm', label: 'At the sides', hint: 'Box to trim, left and right' },
  {
    name: 'settings.clearances.seatBackMm',
    label: 'To the seat back',
    hint: 'With the seat where it is driven',
  },
  { name: 'settings.clearances.aboveMm', label: 'Above', hint: 'To cover, shelf or roof' },
  { name: 'settings.clearances.movingMetalMm', label: 'To moving metal', hint: 'Hinges, struts, seat rails' },
  {
    name: 'settings.clearances.openingMm',
    label: 'In the opening',
    hint: 'All round, on the way in and out',
  },
] as const;

const degrees = (text: string) => {
  const angle = parseAngle(text);
  return isRefusal(angle) ? angle : angle.degrees;
};
const celsius = (text: string) => {
  const temperature = parseTemperature(text, { unit: '°C' });
  return isRefusal(temperature) ? temperature : temperature.celsius;
};
const minutes = (text: string) => {
  const time = parseMinutes(text);
  return isRefusal(time) ? time : time.minutes;
};

/** The gaps a box keeps, and what the saw takes and can do. */
export function ClearanceSettings({ isReadOnly }: { readonly isReadOnly: boolean }) {
  const { control } = useFormContext<ShopFormValues>();
  return (
    <>
      <FieldSet title="Gaps that a box keeps">
        <FieldGrid cellMinPx={210}>
          {GAPS.map(({ name, label, hint }) => (
            <FormLength
              key={name}
              control={control}
              name={name}
              label={label}
              hint={hint}
              maxMm={200}
              isReadOnly={isReadOnly}
            />
          ))}
        </FieldGrid>
      </FieldSet>
      <FieldSet title="Saw">
        <FieldGrid cellMinPx={210}>
          <FormLength
            control={control}
            name="settings.sawKerfMm"
            label="Kerf"
            hint="Measure the slot, not the blade"
            maxMm={50}
            isReadOnly={isReadOnly}
          />
          <FormLength
            control={control}
            name="settings.sheetTrimMm"
            label="Trim"
            hint="Cut off each factory edge"
            maxMm={50}
            isReadOnly={isReadOnly}
          />
          <FormQuantity
            control={control}
            name="settings.bladeMaxTiltDeg"
            label="Blade tilts to"
            unitText="°"
            parse={degrees}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        <Caution>Guard, riving knife, push stick. Nobody saws alone in the house.</Caution>
      </FieldSet>
      <FieldSet title="Waiting and promising">
        <FieldGrid cellMinPx={210}>
          <FormQuantity
            control={control}
            name="settings.workshopTemperatureC"
            label="Usual workshop temperature"
            hint="Glue and coats take longer below 20 °C"
            unitText="°C"
            parse={celsius}
            isReadOnly={isReadOnly}
          />
          <FormQuantity
            control={control}
            name="settings.promiseBufferMinutes"
            label="Kept free before a promise"
            hint="Working time; 4 h or 240 min"
            unitText="min"
            parse={minutes}
            digits={0}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
      </FieldSet>
    </>
  );
}
