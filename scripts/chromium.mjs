import { existsSync } from 'node:fs';

const CANDIDATES = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of an installed Chromium, or null. */
export const findChromium = () =>
  CANDIDATES.find((path) => path !== undefined && path !== '' && existsSync(path)) ?? null;

/** Playwright launch options for the system's Chromium: works as root, asks the network for nothing. */
export function chromiumLaunch() {
  const executablePath = findChromium();
  return {
    ...(executablePath === null ? {} : { executablePath }),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  };
}
