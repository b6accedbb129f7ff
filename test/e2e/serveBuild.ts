import { existsSync } from 'node:fs';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the built tool. */
    toolAddress: string;
  }
}

/** Serves the build in `dist` on a free port for the whole run. */
export default async function serveBuild(project: TestProject): Promise<() => Promise<void>> {
  if (!existsSync('dist/index.html')) {
    throw new Error('There is no build to test: run `npm run build` first.');
  }
  const server = await preview({ preview: { port: 0 }, logLevel: 'warn' });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('The server gave no local address.');
  project.provide('toolAddress', address);
  return () => server.close();
}
