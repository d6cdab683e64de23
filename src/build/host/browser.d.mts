import type { Browser, BrowserServer } from 'playwright-core';

export function findChromium(): string | undefined;
export function launchBrowser(): Promise<Browser>;
export function serveBrowser(): Promise<BrowserServer>;
