// What the database refuses, in the shop's words. Anything else stays unexpected.
import { Prisma } from '@gusset/database';
import { notFound, ShopError } from '../errors.ts';

/** A row that is not there and a row behind the shop's wall give the same answer. */
export function toShopError(error: unknown): ShopError | null {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return null;
  switch (error.code) {
    case 'P2025': // no such row
    case 'P2039': // row-level security
      return notFound('thing');
    case 'P2003': // a foreign key: something that the input names is not in this shop
      return new ShopError(
        'NOT_ACCEPTED',
        'Something this refers to is not in your shop any more. Choose it again.',
      );
    case 'P2002':
      return new ShopError('NAME_TAKEN', 'There is one like that already.');
    case 'P2028': // no connection or no time within the limits
      return new ShopError('BUSY', 'The shop’s server is busy. Nothing was changed; try again in a moment.');
    default:
      return null;
  }
}
