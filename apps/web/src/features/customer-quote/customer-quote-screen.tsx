import type { SnapshotLine } from '@gusset/contracts/quote';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { TitleBlock } from '../../shared/sheet/title-block.tsx';
import { AnswerForm } from './answer-form.tsx';
import styles from './customer-quote.module.css';
import { Reach } from './ended-link.tsx';
import { FrozenDrawingView } from './frozen-drawing.tsx';
import { amountOf, dayOf, instantOf, type OpenPage, paragraphsOf, standingWords } from './page-words.ts';
import { SeenBeacon } from './seen-beacon.tsx';

/** What would be built, for how much, by when; then the customer's answer. Drawn on the server. */
export function CustomerQuoteScreen({ page }: { readonly page: OpenPage }) {
  const { snapshot } = page;
  const standing = standingWords(page);
  const amount = (minor: number) => amountOf(page, minor);
  return (
    <main id="main" className={styles.page}>
      <article className={styles.sheet}>
        <header className={styles.head}>
          <p className={styles.shop}>{snapshot.shop.name}</p>
          <h1>{snapshot.job.title}</h1>
          <p className={styles.forWhom}>
            Quote {snapshot.number} for {snapshot.customer.name}
            {snapshot.vehicle === '' ? '' : `, ${snapshot.vehicle}`}
          </p>
        </header>
        <div role="status" className={styles.standing}>
          {standing === null ? null : (
            <Verdict tone={standing.tone} words={standing.words}>
              <p>{standing.detail}</p>
            </Verdict>
          )}
        </div>
        <KeyFacts page={page} />
        {snapshot.scope === '' ? null : (
          <section>
            <h2>What we will build</h2>
            <div className={styles.prose}>
              {paragraphsOf(snapshot.scope).map((paragraph) => (
                <p key={paragraph} dir="auto">
                  {paragraph}
                </p>
              ))}
            </div>
          </section>
        )}
        <Drawings page={page} />
        {snapshot.sections.map(({ title, lines }) => (
          <section key={title}>
            <h2>{title}</h2>
            <Lines lines={lines} amount={amount} taxIncluded={snapshot.taxIncluded} />
          </section>
        ))}
        <Totals page={page} />
        <SmallPrint page={page} />
        <Messages page={page} />
        {page.state === 'open' || page.state === 'expired' || page.state === 'superseded' ? (
          <AnswerForm
            canApprove={page.state === 'open'}
            snapshotSha256={page.snapshotSha256}
            customerName={snapshot.customer.name}
            shopName={snapshot.shop.name}
            totalWords={amount(snapshot.totalMinor)}
            depositWords={snapshot.depositMinor === 0 ? null : amount(snapshot.depositMinor)}
          />
        ) : null}
        <p className={styles.paperLink} data-screen-only="">
          <a href={paths.customerQuotePaper()} target="_blank" rel="noopener">
            This quote as a PDF
          </a>
        </p>
        <footer className={styles.foot}>
          <TitleBlock
            cells={[
              { caption: 'Shop', value: snapshot.shop.name, span: 2 },
              {
                caption: 'Vehicle',
                value: snapshot.vehicle === '' ? 'none named' : snapshot.vehicle,
                span: 3,
              },
              { caption: 'Job', value: String(snapshot.job.number), isFigures: true },
              { caption: 'Version', value: String(snapshot.version), isFigures: true },
              { caption: 'Issued', value: dayOf(page, snapshot.issuedOn) },
            ]}
          />
          <Reach phone={snapshot.shop.phone} email={snapshot.shop.email} />
        </footer>
      </article>
      <SeenBeacon />
    </main>
  );
}

type PageProps = { readonly page: OpenPage };

function KeyFacts({ page }: PageProps) {
  const { snapshot } = page;
  return (
    <dl className={styles.facts}>
      <div>
        <dt className="caption">In all, tax included</dt>
        <dd className={`figures ${styles.large}`}>{amountOf(page, snapshot.totalMinor)}</dd>
      </div>
      {snapshot.depositMinor === 0 ? null : (
        <div>
          <dt className="caption">Deposit to begin</dt>
          <dd className="figures">{amountOf(page, snapshot.depositMinor)}</dd>
        </div>
      )}
      <div>
        <dt className="caption">Ready on</dt>
        <dd>{snapshot.promisedOn === null ? 'agreed with you' : dayOf(page, snapshot.promisedOn)}</dd>
      </div>
      <div>
        <dt className="caption">Valid until</dt>
        <dd>{dayOf(page, snapshot.validUntil)}</dd>
      </div>
    </dl>
  );
}

function Drawings({ page }: PageProps) {
  const { whole, section } = page.snapshot.drawings;
  if (whole === null && section === null) return null;
  return (
    <section className={styles.drawings}>
      <h2>How it looks</h2>
      {whole === null ? null : <FrozenDrawingView drawing={whole} />}
      {section === null ? null : <FrozenDrawingView drawing={section} />}
    </section>
  );
}

type LinesProps = {
  readonly lines: readonly SnapshotLine[];
  readonly amount: (minor: number) => string;
  readonly taxIncluded: boolean;
};

function Lines({ lines, amount, taxIncluded }: LinesProps) {
  return (
    <table className={styles.lines}>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Quantity</th>
          <th scope="col">{taxIncluded ? 'Price with tax' : 'Price before tax'}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ description, detail, quantity, amountMinor }) => (
          <tr key={`${description} ${detail}`}>
            <th scope="row">
              {description}
              {detail === '' ? null : <small>{detail}</small>}
            </th>
            <td className="figures">{quantity}</td>
            <td className="figures">{amount(amountMinor)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Totals({ page }: PageProps) {
  const { snapshot } = page;
  const amount = (minor: number) => amountOf(page, minor);
  return (
    <div className={styles.totals}>
      <Rows title="Together">
        <Row label={snapshot.taxIncluded ? 'Sum with tax' : 'Sum before tax'}>
          {amount(snapshot.subtotalMinor)}
        </Row>
        {snapshot.taxes.map(({ name, amountMinor }) => (
          <Row key={name} label={snapshot.taxIncluded ? `In it, ${name}` : name}>
            {amount(amountMinor)}
          </Row>
        ))}
        <Row label="Total" isTotal>
          {amount(snapshot.totalMinor)}
        </Row>
        {snapshot.depositMinor === 0 ? null : (
          <>
            <Row label="Deposit, before parts are ordered">{amount(snapshot.depositMinor)}</Row>
            <Row label="At hand-over">{amount(snapshot.balanceMinor)}</Row>
          </>
        )}
      </Rows>
    </div>
  );
}

function SmallPrint({ page }: PageProps) {
  const { exclusions, terms, cautions } = page.snapshot;
  return (
    <>
      {exclusions.length === 0 ? null : (
        <section>
          <h2>Not included</h2>
          <ul className={styles.list}>
            {exclusions.map((exclusion) => (
              <li key={exclusion}>{exclusion}</li>
            ))}
          </ul>
        </section>
      )}
      {terms === '' ? null : (
        <section>
          <h2>Terms</h2>
          <div className={styles.prose}>
            {paragraphsOf(terms).map((paragraph) => (
              <p key={paragraph}>{paragraph}</p>
            ))}
          </div>
        </section>
      )}
      <section className={styles.cautions} aria-label="Cautions">
        <h2 className="caption">Caution</h2>
        {cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </section>
    </>
  );
}

function Messages({ page }: PageProps) {
  if (page.messages.length === 0) return null;
  return (
    <section data-screen-only="">
      <h2>Questions and answers</h2>
      <ol className={styles.messages}>
        {page.messages.map(({ id, side, authorName, text, at }) => (
          <li key={id} data-side={side}>
            <p className={styles.by}>
              {authorName}, {instantOf(page, at)}
            </p>
            <p className={styles.said} dir="auto">
              {text}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}
