import { idSchema, nameSchema, versionSchema } from '@gusset/contracts/common';
import {
  currencySchema,
  foundShopSchema,
  lengthUnitSchema,
  shopSettingsSchema,
  timeZoneSchema,
} from '@gusset/contracts/shop';
import { z } from 'zod';
import { notFound } from '../errors.ts';
import { SHOP_COOKIE } from '../trpc/context.ts';
import { allowed, router, signedIn } from '../trpc/procedures.ts';
import { changeShopSettings, chooseOwnUnits, currentShop, foundShop, shopsOf } from './shop.service.ts';

export const shopRouter = router({
  mine: signedIn.query(({ ctx }) => shopsOf(ctx.deps, ctx.signedIn)),

  found: signedIn.input(foundShopSchema).mutation(async ({ ctx, input }) => {
    const founded = await foundShop(ctx.deps, ctx.signedIn, input, ctx.requestId);
    ctx.setCookie(SHOP_COOKIE, founded.shopId);
    return founded;
  }),

  choose: signedIn.input(z.strictObject({ shopId: idSchema })).mutation(async ({ ctx, input }) => {
    const shops = await shopsOf(ctx.deps, ctx.signedIn);
    if (!shops.some(({ shopId }) => shopId === input.shopId)) throw notFound('shop');
    ctx.setCookie(SHOP_COOKIE, input.shopId);
    return input;
  }),

  current: allowed('shop.read').query(({ ctx }) => currentShop(ctx.deps, ctx.who)),

  chooseUnits: allowed('shop.read')
    .input(z.strictObject({ lengthUnit: lengthUnitSchema.nullable() }))
    .mutation(({ ctx, input }) => chooseOwnUnits(ctx.deps, ctx.who, input.lengthUnit)),

  change: allowed('shop.edit')
    .input(
      z.strictObject({
        version: versionSchema,
        name: nameSchema,
        timeZone: timeZoneSchema,
        currency: currencySchema,
        locale: z.string().min(2).max(35),
        settings: shopSettingsSchema,
      }),
    )
    .mutation(({ ctx, input }) => changeShopSettings(ctx.deps, ctx.who, input)),
});
