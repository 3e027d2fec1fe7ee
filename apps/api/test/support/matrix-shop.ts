// A shop with one of everything, for the access matrix: what ids there are, and whether anything in it has changed.
import { randomUUID } from 'node:crypto';
import { PART_KINDS } from '@gusset/contracts/records';
import type { TestApi, TestPerson } from './harness.ts';
import type { KnownIds } from './sample-input.ts';
import { onServer } from './test-database.ts';

export type MatrixShop = {
  readonly ids: KnownIds;
  /** One text for each table of the shop: equal texts mean that no row of it changed. */
  fingerprint(): Promise<Record<string, string>>;
};

const PART_LISTS: Readonly<Record<(typeof PART_KINDS)[number], string>> = {
  driver: 'Name,Overall diameter (mm),Cut-out diameter (mm),Mounting depth (mm)\nQ-10,269,236,141',
  amplifier: 'Name,Channels,Rated power (ohm:W),Lowest load (ohm)\nA-4,4,4:100,2',
  processor: 'Name,Inputs,Outputs\nP-8,4,8',
  source: 'Name,Preamp outputs\nS-1,3',
  sheet:
    'Name,Material,Nominal thickness (mm),Length (mm),Width (mm),Density (kg/m3)\nMDF,mdf,18,2440,1220,740',
  finish: 'Name,Finish,Thickness (mm)\nCarpet,carpet,3',
  hardware: 'Name,Use\nScrew,screw',
  supply: 'Name,Use\nGlue,glue',
};

export async function matrixShop(api: TestApi, owner: TestPerson): Promise<MatrixShop> {
  const { shopId } = owner;
  const key = () => randomUUID();
  const imported = await owner.api.customer.import.mutate({ key: key(), text: 'Name\nImported Person' });
  const customer = await owner.api.customer.create.mutate({ key: key(), input: { name: 'R. Okafor' } });
  await owner.api.vehicleModel.import.mutate({
    key: key(),
    text: 'Make,Model,Body,First year\nHalden,Brisk,hatch,2021',
  });
  await owner.api.vehicle.import.mutate({
    key: key(),
    text: 'Customer,Vehicle model,Plate\nR. Okafor,Halden Brisk hatch 2021,QR 17',
  });
  await owner.api.supplier.import.mutate({ key: key(), text: 'Name\nHarbour Timber' });
  for (const kind of PART_KINDS)
    await owner.api.part[kind].import.mutate({ key: key(), text: PART_LISTS[kind] });
  const [vehicle] = (await owner.api.vehicle.list.query({})).rows;
  const job = await owner.api.job.open.mutate({
    key: key(),
    job: { title: 'Bass box', customerId: customer.id, vehicleId: vehicle?.id ?? null },
  });
  const [person] = (await owner.api.person.list.query({})).rows;
  const leave = await owner.api.leave.add.mutate({
    key: key(),
    leave: { personId: person?.id ?? '', fromOn: '2026-12-01', toOn: '2026-12-02', note: '' },
  });
  const invitation = await owner.api.people.invite.mutate({
    key: key(),
    name: 'Tomas Reed',
    email: 'tomas@example.com',
    role: 'office',
  });
  const members = await owner.api.people.members.query();
  const first = async (list: Promise<{ rows: readonly { id: string }[] }>) =>
    (await list).rows[0]?.id ?? null;
  const partIds = new Map<string, string | null>();
  for (const kind of PART_KINDS) partIds.set(kind, await first(owner.api.part[kind].list.query({})));

  const offcut = await owner.api.offcut.add.mutate({
    key: key(),
    offcut: { partId: partIds.get('sheet') ?? '', lengthMm: 600, widthMm: 300, place: '' },
  });

  const byField: Readonly<Record<string, string | null>> = {
    customerId: customer.id,
    vehicleId: vehicle?.id ?? null,
    modelId: await first(owner.api.vehicleModel.list.query({})),
    supplierId: await first(owner.api.supplier.list.query({})),
    personId: person?.id ?? null,
    bayId: await first(owner.api.bay.list.query({})),
    partId: partIds.get('sheet') ?? null,
    driverId: partIds.get('driver') ?? null,
    membershipId: members.find(({ isMe }) => !isMe)?.membershipId ?? null,
    jobId: job.id,
    shopId,
    importId: imported.importId,
  };
  const byRouter: Readonly<Record<string, string | null>> = {
    customer: customer.id,
    vehicle: vehicle?.id ?? null,
    vehicleModel: byField.modelId ?? null,
    supplier: byField.supplierId ?? null,
    person: person?.id ?? null,
    bay: byField.bayId ?? null,
    leave: leave.id,
    offcut: offcut.id,
    people: invitation.id,
  };

  return {
    ids(path, field) {
      const [router = '', kind = ''] = path.split('.');
      // An import belongs to its kind, and only customers were imported above by a known id.
      if (field === 'importId') return router === 'customer' ? imported.importId : null;
      if (field !== 'id') return byField[field] ?? null;
      return router === 'part' ? (partIds.get(kind) ?? null) : (byRouter[router] ?? null);
    },
    fingerprint: () => fingerprintOf(api.adminUrl, shopId),
  };
}

function fingerprintOf(adminUrl: string, shopId: string): Promise<Record<string, string>> {
  return onServer(adminUrl, async (client) => {
    const tables = await client.query<{ name: string }>(
      `SELECT table_name AS name FROM information_schema.columns
       WHERE table_schema = 'public' AND column_name = 'shop_id' ORDER BY table_name`,
    );
    const prints: Record<string, string> = {};
    for (const { name } of tables.rows) {
      const { rows } = await client.query<{ print: string }>(
        `SELECT count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' ORDER BY t::text)), '') AS print
         FROM "${name}" t WHERE shop_id = $1`,
        [shopId],
      );
      prints[name] = rows[0]?.print ?? '';
    }
    return prints;
  });
}
