export { currencySchema, type FoundShopInput, foundShopSchema, timeZoneSchema } from './found-shop.ts';
export {
  BAY_KINDS,
  type BayKind,
  bayKindSchema,
  defaultShopSettings,
  type LengthUnit,
  lengthUnitSchema,
  type ShopSettings,
  SKILL_NAME,
  SKILLS,
  type Skill,
  shopSettingsSchema,
  skillSchema,
  taxCodeSchema,
} from './settings.ts';
