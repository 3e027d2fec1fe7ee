import { LostLink } from '../../../features/customer-quote/ended-link.tsx';

export default function NoQuote() {
  return <LostLink />;
}
