import { afterEach, expect, it, vi } from 'vitest';
import { browserPlatform } from '../../../src/footage/browser';

afterEach(() => vi.unstubAllGlobals());

it('says that the decoder is missing, and finds it once it is there', async () => {
  vi.stubGlobal('fetch', async () => new Response(null, { status: 404 }));
  await expect(browserPlatform.loadCore()).rejects.toMatchObject({
    code: 'decoderMissing',
    message: expect.stringContaining('404'),
  });
  vi.unstubAllGlobals();
  expect(await browserPlatform.loadCore()).toBeInstanceOf(WebAssembly.Module);
});

it('takes a server that does not know the media type of WebAssembly', async () => {
  vi.resetModules();
  const real = globalThis.fetch;
  vi.stubGlobal('fetch', async (url: string) => new Response(await (await real(url)).blob()));
  const { browserPlatform: anew } = await import('../../../src/footage/browser');
  expect(await anew.loadCore()).toBeInstanceOf(WebAssembly.Module);
});
