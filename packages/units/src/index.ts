export { isRefusal, type Refusal, type RefusalDetail, refuse } from './refusal.ts';
