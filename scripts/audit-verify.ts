// npm run audit:verify: says for each shop whether the record of what happened still holds, and names the first
// broken link where it does not. Exit code 1 then. Reads DATABASE_URL, which must name a role that sees all shops.
import { verifyAudit } from '@gusset/api/audit/verify-audit';
import pg from 'pg';

const url = process.env.DATABASE_URL;
if (url === undefined || url === '') {
  process.stderr.write(
    'DATABASE_URL is needed: the address of the database, with a role that sees all shops (its administrator).\n',
  );
  process.exit(2);
}
const client = new pg.Client({ connectionString: url });
await client.connect();
const chains = await verifyAudit(async <Row extends object>(sql: string, values: readonly unknown[]) => {
  const { rows } = await client.query<Row>(sql, [...values]);
  return rows;
});
await client.end();
if (chains.length === 0) {
  process.stderr.write('No shop is visible. Is this the administrator’s address of the database?\n');
  process.exit(2);
}
for (const { shopName, shopId, entries, broken } of chains) {
  const verdict =
    broken === null ? `${entries} entries hold` : `BROKEN at entry ${broken.seq}: ${broken.why}`;
  process.stdout.write(`${shopName} (${shopId}): ${verdict}\n`);
}
process.exit(chains.some(({ broken }) => broken !== null) ? 1 : 0);
