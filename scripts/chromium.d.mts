import type { LaunchOptions } from 'playwright-core';

export function findChromium(): string | null;
export function chromiumLaunch(): LaunchOptions;
