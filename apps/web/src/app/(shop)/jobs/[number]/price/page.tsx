import type { Metadata } from 'next';
import { PriceScreen } from '../../../../../features/price/price-screen.tsx';
import { QuotePanel } from '../../../../../features/quote/quote-panel.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Price · job ${(await params).number}` };
}

export default async function PricePage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, async (api, { job }) => ({
    start: await api.sheet.price.read.query({ jobId: job.id }),
    quotes: await api.quote.list.query({ jobId: job.id }),
    customer: await api.customer.read.query({ id: job.customer.id }),
  }));
  return (
    <PriceScreen opened={opened} start={sheet.start}>
      <QuotePanel job={opened.job} start={sheet.quotes} customerEmail={sheet.customer.email} />
    </PriceScreen>
  );
}
