import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

/** Cross-origin isolation, so that WASM threads may be used where a decoder has them. */
const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  base: './',
  plugins: [preact()],
  worker: { format: 'es' },
  // Found all at once: one found later would be bundled beside a second copy of preact.
  optimizeDeps: {
    include: [
      'preact',
      'preact/hooks',
      'preact/jsx-runtime',
      'preact/jsx-dev-runtime',
      '@preact/signals',
      'comlink',
      'd3',
      'valibot',
      'intl-messageformat',
      'mediabunny',
      'hash-wasm',
      '@ffmpeg/core',
      '@techstark/opencv-js',
      'ml-matrix',
      '@stdlib/stats-base-dists-chisquare-cdf',
      '@stdlib/stats-base-dists-chisquare-quantile',
      '@stdlib/stats-base-dists-normal-quantile',
      '@stdlib/stats-base-dists-t-cdf',
      '@stdlib/stats-base-dists-t-quantile',
    ],
  },
  build: { target: 'es2022', chunkSizeWarningLimit: 12_000 },
  server: { headers: isolation },
  preview: { headers: isolation },
});
