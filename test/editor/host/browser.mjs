// Chromium without a window, cut off from every network but loopback.
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The browser that is installed, or undefined. TOMBOLO_CHROMIUM names another. */
export const findChromium = () => process.env.TOMBOLO_CHROMIUM ?? places.find((place) => existsSync(place));

/** Starts it. Throws where there is none. */
export function launchBrowser() {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('No Chromium found. Install it, or set TOMBOLO_CHROMIUM to its path.');
  return chromium.launch({
    executablePath, headless: true,
    args: [
      '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync', '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
    ],
  });
}
