import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { CustomerQuoteScreen } from '../../../features/customer-quote/customer-quote-screen.tsx';
import { EndedLink } from '../../../features/customer-quote/ended-link.tsx';
import { serverApi } from '../../../shared/data/server-api.ts';
import { shownError } from '../../../shared/data/shop-error.ts';

export const metadata: Metadata = { title: 'Your quote' };

const readQuote = async () => {
  const api = await serverApi();
  try {
    return await api.customerQuote.read.query();
  } catch (error) {
    const { code } = shownError(error);
    if (code === 'LINK_ENDED' || code === 'NOT_FOUND') notFound();
    throw error;
  }
};

export default async function CustomerQuotePage() {
  const page = await readQuote();
  return page.state === 'ended' ? <EndedLink shop={page} /> : <CustomerQuoteScreen page={page} />;
}
