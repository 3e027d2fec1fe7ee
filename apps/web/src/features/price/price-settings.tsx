'use client';

import { type Discount, LINE_KINDS, type LineKind } from '@gusset/contracts/estimating';
import type { PriceInput } from '@gusset/contracts/price';
import { formatPercent } from '@gusset/units';
import { FieldGrid } from '../../shared/controls/field-frame.tsx';
import { MoneyField } from '../../shared/controls/money-field.tsx';
import { NumberField } from '../../shared/controls/number-field.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { PercentField } from './percent-field.tsx';
import styles from './price-screen.module.css';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { KIND_WORDS } from './price-words.ts';

export type PriceSettingsProps = {
  readonly sheet: PriceJobSheet;
  readonly words: Readonly<Record<keyof PriceInput, string>>;
};

const MOST = 1_000_000_000;

/** What the customer reads beside the lines, and what differs from the shop's rules in this job. */
export function PriceSettings({ sheet, words }: PriceSettingsProps) {
  const { input, change, mayEdit, data } = sheet;
  const isReadOnly = !mayEdit;
  return (
    <section className={styles.settings} aria-label="Words and rules of this job">
      <h2>What the customer reads</h2>
      <TextArea
        label={words.scope}
        hint="In their words: what is built, from what, how it looks, what it does."
        value={input.scope}
        onChange={(scope) => change({ scope })}
        isReadOnly={isReadOnly}
        maxLength={10_000}
        rows={6}
      />
      <TextArea
        label={words.exclusions}
        hint="One a line: anything they might take for granted and would have to pay."
        value={input.exclusions.join('\n')}
        onChange={(text) => change({ exclusions: linesOf(text) })}
        isReadOnly={isReadOnly}
        isOptional
        rows={3}
      />
      <TextArea
        label={words.terms}
        hint={input.terms === null ? 'As the shop has them; type to change them for this job.' : undefined}
        value={input.terms ?? data.facts.terms}
        onChange={(terms) => change({ terms: terms === data.facts.terms ? null : terms })}
        isReadOnly={isReadOnly}
        maxLength={10_000}
        rows={4}
      />
      <div className={styles.rules} data-screen-only="">
        <h2>Rules of this job</h2>
        <FieldGrid cellMinPx={190}>
          <DiscountFields sheet={sheet} />
          <DepositFields sheet={sheet} />
          <NumberField
            label={words.validDays}
            hint={input.validDays === null ? `${data.facts.validDays} days, as the shop sets it` : 'days'}
            value={input.validDays}
            min={1}
            max={365}
            digits={0}
            onCommit={(figure) => change({ validDays: figure === null ? null : Math.round(figure.value) })}
            isReadOnly={isReadOnly}
          />
        </FieldGrid>
        <details className={styles.taxes}>
          <summary>{words.taxCodeByKind}</summary>
          <FieldGrid cellMinPx={190}>
            {LINE_KINDS.map((kind) => (
              <TaxField key={kind} sheet={sheet} kind={kind} />
            ))}
          </FieldGrid>
        </details>
      </div>
    </section>
  );
}

/** What stands in the field stays as it is typed, empty lines included; the quote leaves them out. */
function linesOf(text: string): string[] {
  return text === ''
    ? []
    : text
        .split('\n')
        .slice(0, 40)
        .map((line) => line.slice(0, 200));
}

const DISCOUNT_ON = {
  all: LINE_KINDS,
  work: ['labour'],
  goods: ['material', 'part'],
} as const satisfies Record<string, readonly LineKind[]>;

function onOf(discount: Discount): keyof typeof DISCOUNT_ON {
  if (discount.on.includes('labour')) return discount.on.length > 1 ? 'all' : 'work';
  return 'goods';
}

function DiscountFields({ sheet }: Pick<PriceSettingsProps, 'sheet'>) {
  const { input, changeNow, mayEdit, data } = sheet;
  const { discount } = input;
  const { currency } = data.facts;
  const set = (next: Discount | null) => changeNow({ discount: next });
  const on = [...(discount === null ? DISCOUNT_ON.all : discount.on)];
  return (
    <>
      <Select
        label="Discount"
        options={[
          { id: 'none', label: 'None' },
          { id: 'percent', label: 'A share' },
          { id: 'amount', label: 'An amount' },
        ]}
        value={discount?.by ?? 'none'}
        onChange={(by) => {
          if (by === 'none') set(null);
          else set(by === 'percent' ? { by, rateBasisPoints: 500, on } : { by, amountMinor: 0, on });
        }}
        isDisabled={!mayEdit}
      />
      {discount?.by === 'percent' ? (
        <PercentField
          label="Share"
          basisPoints={discount.rateBasisPoints}
          maxBasisPoints={10_000}
          onCommit={(rateBasisPoints) => set({ ...discount, rateBasisPoints: rateBasisPoints ?? 0 })}
          isReadOnly={!mayEdit}
        />
      ) : null}
      {discount?.by === 'amount' ? (
        <MoneyField
          label="Amount"
          currency={currency}
          value={{ minor: discount.amountMinor, currency }}
          minMinor={0}
          maxMinor={MOST}
          onCommit={(amount) => set({ ...discount, amountMinor: amount?.minor ?? 0 })}
          isReadOnly={!mayEdit}
        />
      ) : null}
      {discount === null ? null : (
        <Select
          label="Taken off"
          options={[
            { id: 'all', label: 'Everything' },
            { id: 'work', label: 'Work only' },
            { id: 'goods', label: 'Parts and materials only' },
          ]}
          value={onOf(discount)}
          onChange={(id) => set({ ...discount, on: [...DISCOUNT_ON[id]] })}
          isDisabled={!mayEdit}
        />
      )}
    </>
  );
}

function DepositFields({ sheet }: Pick<PriceSettingsProps, 'sheet'>) {
  const { input, changeNow, mayEdit, data } = sheet;
  const { deposit } = input;
  const { currency, depositBasisPoints } = data.facts;
  return (
    <>
      <Select
        label="Deposit"
        options={[
          { id: 'shop', label: `As the shop sets it, ${formatPercent(depositBasisPoints)}` },
          { id: 'percent', label: 'Another share' },
          { id: 'amount', label: 'An amount' },
          { id: 'parts', label: 'The parts to be bought' },
          { id: 'none', label: 'None' },
        ]}
        value={deposit?.by ?? 'shop'}
        onChange={(by) => {
          if (by === 'shop') changeNow({ deposit: null });
          else if (by === 'percent') changeNow({ deposit: { by, rateBasisPoints: depositBasisPoints } });
          else if (by === 'amount') changeNow({ deposit: { by, amountMinor: 0 } });
          else changeNow({ deposit: { by } });
        }}
        isDisabled={!mayEdit}
      />
      {deposit?.by === 'percent' ? (
        <PercentField
          label="Share of the total"
          basisPoints={deposit.rateBasisPoints}
          maxBasisPoints={10_000}
          onCommit={(rateBasisPoints) =>
            changeNow({ deposit: { ...deposit, rateBasisPoints: rateBasisPoints ?? 0 } })
          }
          isReadOnly={!mayEdit}
        />
      ) : null}
      {deposit?.by === 'amount' ? (
        <MoneyField
          label="Amount of the deposit"
          currency={currency}
          value={{ minor: deposit.amountMinor, currency }}
          minMinor={0}
          maxMinor={MOST}
          onCommit={(amount) => changeNow({ deposit: { ...deposit, amountMinor: amount?.minor ?? 0 } })}
          isReadOnly={!mayEdit}
        />
      ) : null}
    </>
  );
}

const AS_SET = 'as-set';
const UNTAXED = 'untaxed';

function TaxField({ sheet, kind }: Pick<PriceSettingsProps, 'sheet'> & { readonly kind: LineKind }) {
  const { input, changeNow, mayEdit, data } = sheet;
  const { codes, codeByKind } = data.facts.taxes;
  const own = input.taxCodeByKind[kind];
  const usual = codeByKind[kind] ?? 'not taxed';
  const choose = (id: string) => {
    const { [kind]: _left, ...others } = input.taxCodeByKind;
    const next = id === AS_SET ? others : { ...others, [kind]: id === UNTAXED ? null : id };
    changeNow({ taxCodeByKind: next });
  };
  return (
    <Select
      label={KIND_WORDS[kind]}
      options={[
        { id: AS_SET, label: `As the shop sets it: ${usual}` },
        ...codes.map(({ code, name, rateBasisPoints }) => ({
          id: code,
          label: `${name} ${formatPercent(rateBasisPoints)}`,
        })),
        { id: UNTAXED, label: 'Not taxed' },
      ]}
      value={own === undefined ? AS_SET : (own ?? UNTAXED)}
      onChange={choose}
      isDisabled={!mayEdit}
    />
  );
}
