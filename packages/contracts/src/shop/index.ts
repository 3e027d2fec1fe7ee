export { currencySchema, type FoundShopInput, foundShopSchema, timeZoneSchema } from './found-shop.ts';
export {
  bayKindSchema,
  defaultShopSettings,
  type LengthUnit,
  lengthUnitSchema,
  type ShopSettings,
  shopSettingsSchema,
  skillSchema,
  taxCodeSchema,
} from './settings.ts';
export { BAY_KINDS, type BayKind, SKILL_NAME, SKILLS, type Skill } from './skills.ts';
