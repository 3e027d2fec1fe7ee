'use client';

import { bayInputSchema } from '@gusset/contracts/records';
import { BAY_KINDS, type BayKind } from '@gusset/contracts/shop';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import { FormText } from '../../shared/controls/form-text.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ArchiveButton } from '../../shared/record/archive-button.tsx';
import { RecordDialog } from '../../shared/record/record-dialog.tsx';
import { FieldSet } from '../../shared/record/record-page.tsx';
import { useRecordForm } from '../../shared/record/use-record-form.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import styles from './people.module.css';

type Bay = ApiOutputs['bay']['list']['rows'][number];

const KIND_WORDS: Readonly<Record<BayKind, { readonly label: string; readonly detail: string }>> = {
  bench: { label: 'Bench work', detail: 'cutting, gluing, wiring on the bench' },
  vehicle: { label: 'A vehicle fits in', detail: 'measuring, fitting, tuning' },
  finishing: { label: 'Finishing', detail: 'coats and paint, with extraction' },
};

/** Where work is done, and which work can be done there. */
export function BaysScreen({ above }: { readonly above: ReactNode }) {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const mayEdit = useMay('bay.edit');
  const query = useQuery(trpc.bay.list.queryOptions({ limit: 100 }));
  const [open, setOpen] = useState<Bay | 'new' | null>(null);
  const add = mayEdit ? (
    <Button look="primary" onPress={() => setOpen('new')}>
      Add a bay
    </Button>
  ) : null;
  return (
    <Page>
      <PageHeader kicker="Shop" title="Bays" acts={add} />
      {above}
      <SheetFrame
        titleBlock={[
          { caption: 'Shop', value: shop.name, span: 3 },
          { caption: 'Sheet', value: 'Bays', span: 2 },
          { caption: 'Bays', value: query.data?.total ?? '–', isFigures: true },
        ]}
      >
        {query.isPending ? (
          <Skeleton lines={3} what="Fetching the bays" />
        ) : query.isError ? (
          <Verdict tone="fail" words={shownError(query.error).message} />
        ) : query.data.rows.length === 0 ? (
          <EmptyState title="No bays yet" act={add}>
            The plan puts every task in a bay. Without one nothing can be promised.
          </EmptyState>
        ) : (
          <ul className={styles.list}>
            {query.data.rows.map((bay) => (
              <li key={bay.id} className={styles.person}>
                <strong>{bay.name}</strong>
                <span className={styles.detail}>
                  {bay.kinds.map((kind) => KIND_WORDS[kind].label).join(', ')}
                </span>
                {mayEdit ? (
                  <Button look="quiet" aria-label={`Change ${bay.name}`} onPress={() => setOpen(bay)}>
                    Change
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </SheetFrame>
      {open === null ? null : <BayDialog bay={open === 'new' ? null : open} onClose={() => setOpen(null)} />}
    </Page>
  );
}

const LABELS = { name: 'Name', kinds: 'What can be done here' } as const;

function BayDialog({ bay, onClose }: { readonly bay: Bay | null; readonly onClose: () => void }) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const finish = () => {
    void queries.invalidateQueries({ queryKey: trpc.bay.pathKey() });
    onClose();
  };
  const form = useRecordForm({
    schema: bayInputSchema,
    start: { name: bay?.name ?? '', kinds: bay?.kinds ?? ['bench'] },
    record: bay,
    noun: 'Bay',
    create: (key, input) => client.bay.create.mutate({ key, input }),
    change: (at, input) => client.bay.change.mutate({ ...at, input }),
    onSaved: finish,
  });
  const { control, watch, setValue, formState } = form.form;
  const kinds = watch('kinds');
  return (
    <RecordDialog
      title={bay === null ? 'Add a bay' : bay.name}
      form={form}
      labels={LABELS}
      onClose={onClose}
      acts={
        <>
          {bay === null ? null : (
            <ArchiveButton
              name={bay.name}
              isArchived={bay.archived}
              archive={(archived) => client.bay.archive.mutate({ id: bay.id, archived })}
              onDone={finish}
            />
          )}
          <Button look="primary" onPress={() => void form.save()} isPending={form.isSaving}>
            {bay === null ? 'Add' : 'Save'}
          </Button>
        </>
      }
    >
      <FormText control={control} name="name" label={LABELS.name} isRequired />
      <FieldSet title={LABELS.kinds}>
        {BAY_KINDS.map((kind) => (
          <Checkbox
            key={kind}
            isSelected={kinds.includes(kind)}
            detail={KIND_WORDS[kind].detail}
            onChange={(isOn) =>
              setValue('kinds', isOn ? [...kinds, kind] : kinds.filter((one) => one !== kind), {
                shouldDirty: true,
                shouldValidate: true,
              })
            }
          >
            {KIND_WORDS[kind].label}
          </Checkbox>
        ))}
        {formState.errors.kinds ? <p role="alert">{formState.errors.kinds.message}</p> : null}
      </FieldSet>
    </RecordDialog>
  );
}
