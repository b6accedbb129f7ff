/** What the built tool may do (Content Security Policy, level 3), and the headers it is served with. */
import type { Plugin } from 'vite';

/**
 * Of the page and of its threads. Styles are set through the object model alone, so no inline style needs leave; of code
 * made at run time only WebAssembly has it.
 */
export const POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Cross-origin isolation. Nothing needs it yet; it makes the page's clock finer and keeps other pages out. */
export const ISOLATION = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** What our own server sends with every file. */
export const HEADERS: Readonly<Record<string, string>> = {
  ...ISOLATION,
  'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};

/** The policy in the built page itself, for servers that send no headers. */
export const policy = (): Plugin => ({
  name: 'policy',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  },
});
