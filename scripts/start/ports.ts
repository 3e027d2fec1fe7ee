import { createServer } from 'node:net';

/** Throws a sentence when somebody else listens there. */
export async function requireFreePort(host: string, port: number): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const server = createServer();
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') {
        reject(
          new Error(
            `Port ${port} is in use by another program. Stop it, or start with another: PORT=${port + 1} npm start`,
          ),
        );
      } else if (error.code === 'EACCES') {
        reject(
          new Error(
            `Port ${port} needs more rights than this user has. Choose one above 1023: PORT=4300 npm start`,
          ),
        );
      } else {
        reject(new Error(`Cannot listen on ${host} port ${port}: ${error.message}`));
      }
    });
    server.listen(port, host, () => server.close(() => resolve()));
  });
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}
