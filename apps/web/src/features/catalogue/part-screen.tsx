'use client';

import { type PartInput, type PartKind, partInputSchemas } from '@gusset/contracts/records';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import type { ReactNode } from 'react';
import { type DefaultValues, FormProvider } from 'react-hook-form';
import type { z } from 'zod';
import { capital, KIND_WORDS, kindSlug } from '../../shared/catalogue-kinds.ts';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import { paths } from '../../shared/paths.ts';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { RecordPage } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { wholeListKey } from '../../shared/record/use-whole-list.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { AmplifierFigures } from './amplifier-figures.tsx';
import { DriverFigures, DriverNotes } from './driver-figures.tsx';
import { FinishFigures, HardwareFigures, SupplyFigures } from './material-figures.tsx';
import { changePart, createPart, type PartRow } from './part-calls.ts';
import { PartCommon, PartNotes } from './part-common.tsx';
import { PART_LABELS } from './part-labels.ts';
import { newPartStart, type PartValues, partStart } from './part-start.ts';
import { SheetFigures, SheetNotes } from './sheet-figures.tsx';
import { ProcessorFigures, SourceFigures } from './signal-figures.tsx';

type Figures = (props: { readonly isReadOnly: boolean }) => ReactNode;

const FIGURES: Readonly<Record<PartKind, Figures>> = {
  driver: DriverFigures,
  amplifier: AmplifierFigures,
  processor: ProcessorFigures,
  source: SourceFigures,
  sheet: SheetFigures,
  finish: FinishFigures,
  hardware: HardwareFigures,
  supply: SupplyFigures,
};

/** What the figures come to, beside them. */
const NOTES: Partial<Record<PartKind, () => ReactNode>> = { driver: DriverNotes, sheet: SheetNotes };

/** One part of the catalogue with the figures of its kind. Null makes a new one. */
export function PartScreen({ kind, part }: { readonly kind: PartKind; readonly part: PartRow | null }) {
  const client = useTRPCClient();
  const queries = useQueryClient();
  const router = useRouter();
  const { shop, lengthUnit } = useDisplay();
  const mayEdit = useMay('catalogue.edit');
  const words = KIND_WORDS[kind];
  const slug = kindSlug(kind);
  const refresh = () => void queries.invalidateQueries({ queryKey: wholeListKey(`part.${kind}`) });
  const form = useRecordForm<PartValues, PartInput, PartRow>({
    // The schema of one kind is a member of the union of all.
    schema: partInputSchemas[kind] as z.ZodType<PartInput, PartValues>,
    // Figures that nobody has typed yet are null; the schema asks for them when the form is sent.
    start: (part === null ? newPartStart(kind) : partStart(part)) as DefaultValues<PartValues>,
    record: part,
    noun: capital(words.one),
    create: (key, input) => createPart(client, key, input),
    change: (at, input) => changePart(client, at, input),
    onSaved: (saved, wasNew) => {
      refresh();
      if (wasNew) router.replace(paths.cataloguePart(slug, saved.id));
      else router.refresh();
    },
  });
  const [maker, name, code] = form.form.watch(['maker', 'name', 'code']);
  const title = [maker, name].filter(Boolean).join(' ');
  const KindFigures = FIGURES[kind];
  const KindNotes = NOTES[kind];
  return (
    <FormProvider {...form.form}>
      <RecordPage
        kicker={`Parts · ${capital(words.many)}`}
        title={part === null ? `New ${words.one}` : title}
        verb={part === null ? `Add ${words.one}` : 'Save'}
        form={form}
        mayEdit={mayEdit}
        isArchived={part?.archived}
        labels={PART_LABELS}
        acts={
          part === null ? null : (
            <ArchiveButton<PartRow>
              name={title}
              isArchived={part.archived}
              archive={async (archived) => client.part[kind].archive.mutate({ id: part.id, archived })}
              onDone={(saved) => {
                form.adopt(saved);
                refresh();
                router.refresh();
              }}
            />
          )
        }
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 2 },
          { caption: capital(words.one), value: title || 'not named yet', span: 3 },
          { caption: 'Order code', value: code || 'none', isFigures: true },
          { caption: 'Units', value: lengthUnit },
        ]}
        notes={
          KindNotes === undefined ? undefined : (
            <>
              <KindNotes />
              {kind === 'driver' && part !== null ? (
                <p>
                  <LinkButton href={paths.driverSweep(part.id)}>From an impedance sweep</LinkButton>
                </p>
              ) : null}
            </>
          )
        }
      >
        <PartCommon isReadOnly={!mayEdit} knownSupplier={supplierOf(part)} />
        <KindFigures isReadOnly={!mayEdit} />
        <PartNotes isReadOnly={!mayEdit} />
      </RecordPage>
    </FormProvider>
  );
}

function supplierOf(part: PartRow | null): { readonly id: string; readonly name: string } | null {
  return part === null || part.supplierId === null
    ? null
    : { id: part.supplierId, name: part.supplierName ?? '' };
}
