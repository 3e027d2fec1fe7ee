import styles from './customer-quote.module.css';

export type EndedLinkProps = {
  readonly shop: { readonly shopName: string; readonly phone: string; readonly email: string };
};

/** The link was good once; whom to ask is all it tells now. */
export function EndedLink({ shop }: EndedLinkProps) {
  return (
    <main id="main" className={styles.page}>
      <article className={styles.sheet}>
        <header className={styles.head}>
          <p className={styles.shop}>{shop.shopName}</p>
          <h1>This link has ended</h1>
        </header>
        <p>The shop has closed it, or its time is over. They will gladly send you a new one.</p>
        <Reach phone={shop.phone} email={shop.email} />
      </article>
    </main>
  );
}

/** No secret came along, or one that nobody made. */
export function LostLink() {
  return (
    <main id="main" className={styles.page}>
      <article className={styles.sheet}>
        <header className={styles.head}>
          <h1>No quote is open here</h1>
        </header>
        <p>
          Open the link in the shop’s mail once more: this device does not know it, or has forgotten it.
          Cookies must be allowed for this page.
        </p>
      </article>
    </main>
  );
}

export function Reach({ phone, email }: { readonly phone: string; readonly email: string }) {
  if (phone === '' && email === '') return null;
  return (
    <p className={styles.reach}>
      {phone === '' ? null : <a href={`tel:${phone.replace(/[^+\d]/g, '')}`}>{phone}</a>}
      {email === '' ? null : <a href={`mailto:${email}`}>{email}</a>}
    </p>
  );
}
