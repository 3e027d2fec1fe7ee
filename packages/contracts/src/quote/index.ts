// Quotes: what the customer is shown, how it travels, and what may be asked of it.
export {
  type FrozenDrawing,
  frozenDrawingSchema,
  type QuoteSnapshot,
  quoteSnapshotSchema,
  type SnapshotLine,
  snapshotLineSchema,
} from './quote-snapshot.ts';
export {
  approveQuoteSchema,
  askAboutQuoteSchema,
  type CustomerQuotePage,
  declineQuoteSchema,
  type QuoteMessageView,
  type QuoteStanding,
  type QuoteView,
  sendQuoteSchema,
} from './quote-view.ts';
