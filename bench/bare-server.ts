// A process with nothing but Fastify and `pg`, to hold the API's memory against: `DATABASE_URL` and the shop's id.
import pg from 'pg';
import { bareRoute } from './large-shop.ts';

const shopId = process.argv[2];
if (shopId === undefined) throw new Error('the id of the shop is needed');
const pool = new pg.Pool({ connectionString: process.env.DATABASE_URL, max: 10 });
const address = await bareRoute(pool, shopId).listen({ host: '127.0.0.1', port: 0 });
process.stdout.write(`bare ${address}\n`);
