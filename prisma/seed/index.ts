// The demo shop: an invented place with enough in it that every screen has something true to show.
export { DEMO_EMAILS, DEMO_PASSWORD } from './demo-staff.ts';
export { type Removed, removeDemoShop } from './remove-demo-shop.ts';
export { type DemoShop, seedDemoShop } from './seed-demo-shop.ts';
