/**
 * Finds a Chromium or Chrome for the browser tests, or installs one: from Debian's packages where that is possible,
 * otherwise by playwright-core's own download.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
];
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** Flags that keep the browser to the page under test: nothing is looked up outside. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function findChromium(): string | null {
  const asked = process.env.CHROME_PATH;
  if (asked !== undefined && asked !== '') {
    if (!usable(asked)) throw new Error(`CHROME_PATH is ${asked}, and there is no program there.`);
    return asked;
  }
  for (const folder of (process.env.PATH ?? '').split(delimiter))
    for (const name of names) if (usable(join(folder, name))) return join(folder, name);
  for (const place of places) if (usable(place)) return place;
  const own = chromium.executablePath();
  return own !== '' && existsSync(own) ? own : null;
}

export function chromiumOrInstall(): string {
  const found = findChromium();
  if (found !== null) return found;
  console.log('No Chromium or Chrome found; installing one.');
  const root = process.getuid?.() === 0;
  if (root && existsSync('/usr/bin/apt-get')) {
    const quiet = { stdio: ['ignore', 'ignore', 'inherit'] as ['ignore', 'ignore', 'inherit'] };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
  }
  if (findChromium() === null)
    spawnSync(process.execPath, [join('node_modules', 'playwright-core', 'cli.js'), 'install', 'chromium'], {
      stdio: 'inherit',
    });
  const installed = findChromium();
  if (installed === null)
    throw new Error(
      'The browser tests need Chromium or Chrome. Install one (Debian: apt-get install chromium) or name it in CHROME_PATH.',
    );
  return installed;
}

function usable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** For people: `node scripts/chromium.ts` says which one the tests would use. */
if (import.meta.main) {
  const path = chromiumOrInstall();
  console.log(path, execFileSync(path, ['--version'], { encoding: 'utf8' }).trim());
}
