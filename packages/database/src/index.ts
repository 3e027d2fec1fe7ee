export { type DatabaseOptions, openClient } from './client.ts';
export { type Doors, makeDoors, type Tx } from './door.ts';
export { type EmbeddedPostgres, startEmbeddedPostgres } from './embedded.ts';
export { Prisma } from './generated/prisma/client.ts';
export { type Listening, type ListenOptions, listen } from './listen.ts';
export { migrate } from './migrate.ts';
