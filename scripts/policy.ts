/** What the built page may do (Content Security Policy, level 3), and the headers it is served with. */
import type { Plugin } from 'vite';

/** Styles are set through the object model alone, so no inline style needs leave. */
const PAGE = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
];
export const PAGE_POLICY = PAGE.join('; ');

/**
 * Threads that load OpenCV: its binding makes named functions from text and unpacks its WebAssembly from a data address.
 * Neither is allowed to anything else.
 */
const OPENCV_THREAD = /\/(measure|calibrate)\.worker-[^/]*\.js$/;
const OPENCV_POLICY =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'unsafe-eval'; connect-src 'self' data:";

/** Cross-origin isolation. Nothing needs it yet; it makes the page's clock finer and keeps other pages out. */
export const ISOLATION = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

export const headersOf = (path: string): Readonly<Record<string, string>> => ({
  ...ISOLATION,
  'Content-Security-Policy': OPENCV_THREAD.test(path)
    ? OPENCV_POLICY
    : `${PAGE_POLICY}; frame-ancestors 'none'`,
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
});

/** The policy in the built page itself, for servers that send no headers, and the headers of our own server. */
export const policy = (): Plugin => ({
  name: 'policy',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { server }) =>
      server === undefined
        ? [
            {
              tag: 'meta',
              attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
              injectTo: 'head-prepend',
            },
          ]
        : [],
  },
  configurePreviewServer({ middlewares }) {
    middlewares.use((request, response, next) => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost');
      for (const [name, value] of Object.entries(headersOf(pathname))) {
        response.setHeader(name, value);
      }
      next();
    });
  },
});
