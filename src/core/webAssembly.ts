import { ExitframeError, reasonOf } from './reason';

/** The core knows no browser, and this is all it needs of it. */
declare const WebAssembly: { readonly Module: new (bytes: Uint8Array) => unknown } | undefined;

/** Magic number and version 1 (WebAssembly Core Specification, 5.5.16): the shortest module. */
const EMPTY_MODULE = Uint8Array.of(0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0);

/**
 * Throws `webAssemblyRefused` where it may not run, as under a content policy that does not allow it. The libraries
 * themselves say so late, in the browser's words, or never.
 */
export function requireWebAssembly(): void {
  try {
    if (WebAssembly === undefined) throw new Error('this browser has none');
    new WebAssembly.Module(EMPTY_MODULE);
  } catch (error) {
    const why = reasonOf(error).message;
    throw new ExitframeError(
      'webAssemblyRefused',
      `This page may not run WebAssembly, without which nothing is decoded or measured: ${why}`,
      "Have the server's Content-Security-Policy allow script-src 'self' 'wasm-unsafe-eval', or send none, then reload the page; a browser locked down by its settings has to allow it too.",
      { cause: error, values: { why } },
    );
  }
}
