// One way to the parts of the API: what all kinds take alike goes by the kind, what differs goes by the input.
import type { PartInput, PartKind } from '@gusset/contracts/records';
import type { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';

export type Client = ReturnType<typeof useTRPCClient>;
type PartOutputs = ApiOutputs['part'];
export type PartRow = { [K in PartKind]: PartOutputs[K]['read'] }[PartKind];

export async function createPart(client: Client, key: string, input: PartInput): Promise<PartRow> {
  const { part } = client;
  switch (input.kind) {
    case 'driver':
      return part.driver.create.mutate({ key, input });
    case 'amplifier':
      return part.amplifier.create.mutate({ key, input });
    case 'processor':
      return part.processor.create.mutate({ key, input });
    case 'source':
      return part.source.create.mutate({ key, input });
    case 'sheet':
      return part.sheet.create.mutate({ key, input });
    case 'finish':
      return part.finish.create.mutate({ key, input });
    case 'hardware':
      return part.hardware.create.mutate({ key, input });
    case 'supply':
      return part.supply.create.mutate({ key, input });
  }
}

export async function changePart(
  client: Client,
  at: { readonly id: string; readonly version: number },
  input: PartInput,
): Promise<PartRow> {
  const { part } = client;
  switch (input.kind) {
    case 'driver':
      return part.driver.change.mutate({ ...at, input });
    case 'amplifier':
      return part.amplifier.change.mutate({ ...at, input });
    case 'processor':
      return part.processor.change.mutate({ ...at, input });
    case 'source':
      return part.source.change.mutate({ ...at, input });
    case 'sheet':
      return part.sheet.change.mutate({ ...at, input });
    case 'finish':
      return part.finish.change.mutate({ ...at, input });
    case 'hardware':
      return part.hardware.change.mutate({ ...at, input });
    case 'supply':
      return part.supply.change.mutate({ ...at, input });
  }
}
