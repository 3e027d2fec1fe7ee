import { z } from 'zod';
import { SHEET_KINDS } from './sheet-places.ts';

export const sheetKindSchema = z.enum(SHEET_KINDS);
