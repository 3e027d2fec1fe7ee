// The demo shop: an invented place with enough in it that every screen has something true to show.
export { seedDemoShop } from './seed-demo-shop.ts';
