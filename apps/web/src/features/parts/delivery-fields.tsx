'use client';

import { formatInstant, formatShopDate } from '@gusset/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { DateField } from '../../shared/controls/date-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import styles from './parts-screen.module.css';

export type DeliveryFieldsProps = {
  readonly delivery: ApiOutputs['delivery']['ofJob'][number] | null;
  readonly jobId: string;
};

/** When it is expected, and whether it is in hand. A late part moves the plan, not the drawings. */
export function DeliveryFields({ delivery, jobId }: DeliveryFieldsProps) {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const { shop } = useDisplay();
  const mayEdit = useMay('delivery.edit');
  const [isOpen, setIsOpen] = useState(false);
  const set = useMutation(
    trpc.delivery.set.mutationOptions({
      onSettled: () => queries.invalidateQueries({ queryKey: trpc.delivery.ofJob.queryKey({ jobId }) }),
    }),
  );
  if (delivery === null) return <span className={styles.because} />;
  const { lineKey, version, expectedOn, receivedAt } = delivery;
  const send = (changes: { expectedOn?: string | null; received?: boolean }) =>
    set.mutate({ jobId, lineKey, version, expectedOn, received: receivedAt !== null, ...changes });
  const words =
    receivedAt !== null
      ? `in hand ${formatInstant(receivedAt, { zone: shop.timeZone, locale: shop.locale, style: 'short' })}`
      : expectedOn === null
        ? 'no date yet'
        : `due ${formatShopDate(expectedOn, shop.locale, 'day')}`;
  return (
    <div className={styles.delivery}>
      <span className={receivedAt === null && expectedOn === null ? styles.short : undefined}>{words}</span>
      {mayEdit ? (
        <span className={styles.deliveryActs} data-screen-only="">
          {receivedAt === null ? (
            <>
              <Button
                look="quiet"
                aria-expanded={isOpen}
                aria-label={`Date for ${delivery.description}`}
                onPress={() => setIsOpen(!isOpen)}
              >
                Date
              </Button>
              <Button
                look="quiet"
                isPending={set.isPending}
                aria-label={`It has come: ${delivery.description}`}
                onPress={() => send({ received: true })}
              >
                It has come
              </Button>
            </>
          ) : (
            <Button
              look="quiet"
              isPending={set.isPending}
              aria-label={`Not yet: ${delivery.description}`}
              onPress={() => send({ received: false })}
            >
              Not yet
            </Button>
          )}
        </span>
      ) : null}
      {isOpen && receivedAt === null ? (
        <DateField
          label={`Expected, ${delivery.description}`}
          value={expectedOn}
          onChange={(day) => {
            send({ expectedOn: day });
            setIsOpen(false);
          }}
        />
      ) : null}
      {set.isError ? (
        <span role="alert" className={styles.short}>
          {shownError(set.error).message}
        </span>
      ) : null}
    </div>
  );
}
