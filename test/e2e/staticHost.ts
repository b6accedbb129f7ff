import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

export interface StaticHost {
  readonly address: string;
  /** Ends it with every connection, as a network that is gone. */
  close(): Promise<void>;
}

/**
 * The plainest of web hosts: files of a folder under a sub-path, no header of ours. `prelude` gives what is put before a
 * file at the time it is asked for.
 */
export async function staticHost(
  folder: string,
  path: string,
  prelude: (name: string) => string = () => '',
): Promise<StaticHost> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const name = pathname.slice(path.length) || 'index.html';
    const file = join(folder, normalize(`/${decodeURIComponent(name)}`));
    if (!pathname.startsWith(path) || !statSync(file, { throwIfNoEntry: false })?.isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream' });
    response.write(prelude(name));
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${path}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
