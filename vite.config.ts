import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { noEval } from './scripts/noEval.ts';
import { offline } from './scripts/offline.ts';
import { HEADERS, ISOLATION, policy } from './scripts/policy.ts';

export default defineConfig({
  base: './',
  plugins: [preact(), noEval(), policy(), offline()],
  worker: { format: 'es', plugins: () => [noEval()] },
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
  // A file written into the code as a data address would be refused by the policy.
  build: { target: 'es2022', chunkSizeWarningLimit: 12_000, assetsInlineLimit: 0 },
  server: { headers: ISOLATION },
  preview: { headers: HEADERS },
});
