// The shop's own sheet as a form: its name and signs, and all its settings; each page of it shows a part.
import { nameSchema } from '@gusset/contracts/common';
import { currencySchema, shopSettingsSchema, timeZoneSchema } from '@gusset/contracts/shop';
import { z } from 'zod';

export const shopFormSchema = z.strictObject({
  name: nameSchema,
  timeZone: timeZoneSchema,
  currency: currencySchema,
  locale: z.string().min(2).max(35),
  settings: shopSettingsSchema,
});
export type ShopForm = z.infer<typeof shopFormSchema>;
export type ShopFormValues = z.input<typeof shopFormSchema>;

const OWN = new Set(['name', 'timeZone', 'currency', 'locale']);

/** The server names a setting as it stands among the settings. */
export function shopFormPath(serverPath: string): string {
  const first = serverPath.split('.')[0] ?? '';
  return OWN.has(first) || first === 'settings' ? serverPath : `settings.${serverPath}`;
}
