import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { chromiumLaunch } from './scripts/chromium.mjs';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          environment: 'node',
          // Node's own rules: OpenCV's module is a thenable that resolves to itself, and the runner's
          // stand-in for modules would pass that on and wait for ever.
          deps: { interopDefault: false },
          include: [
            'test/unit/**/*.test.ts',
            'test/outside/**/*.test.ts',
            'test/headless/**/*.test.ts',
          ],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: './vite.config.ts',
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.{ts,tsx}'],
          testTimeout: 120_000,
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: chromiumLaunch() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['test/e2e/**/*.test.ts'],
          globalSetup: ['test/e2e/serveBuild.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
