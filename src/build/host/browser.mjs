// Chromium without a window, cut off from every network but loopback.
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The browser that is installed, or undefined. TOMBOLO_CHROMIUM names another. */
export const findChromium = () => process.env.TOMBOLO_CHROMIUM ?? places.find((place) => existsSync(place));

function options() {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('No Chromium found. Install it, or set TOMBOLO_CHROMIUM to its path.');
  return {
    executablePath,
    headless: true,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
    ],
  };
}

/** Starts it. Throws where there is none. */
export const launchBrowser = async () => chromium.launch(options());

/** Starts it for other processes, which reach it at its `wsEndpoint()`. Throws where there is none. */
export const serveBrowser = async () => chromium.launchServer({ ...options(), host: '127.0.0.1' });
