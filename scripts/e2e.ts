/**
 * Runs the browser tests: builds the app, starts the server with a fresh demo shop for each file of `web/e2e`, and drives a
 * real Chromium. `node scripts/e2e.ts [part of a file or test name]`. Set E2E_NO_BUILD=1 to test the build that is there.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, chromiumOrInstall } from './chromium.ts';
import type { BrowserTest, E2E } from './e2e-types.ts';

const TEST_TIMEOUT_MS = 150_000;
const only = process.argv[2] ?? '';
const folder = join(import.meta.dirname, '..', 'web', 'e2e');
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const executablePath = chromiumOrInstall();
if (process.env.E2E_NO_BUILD !== '1') execFileSync('npm', ['run', '--silent', 'build'], { stdio: 'inherit' });
const browser = await chromium.launch({ executablePath, headless: true, args: CHROMIUM_FLAGS });
let passed = 0;
let failed = 0;
try {
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.e2e.ts'))
    .sort()) {
    const { tests } = (await import(join(folder, file))) as { tests: readonly BrowserTest[] };
    const chosen = tests.filter((test) => file.includes(only) || test.name.includes(only));
    if (chosen.length === 0) continue;
    console.log(`\n${file}`);
    const server = await startServer();
    try {
      for (const test of chosen) {
        const started = Date.now();
        try {
          await runTest(browser, server.baseUrl, file, test);
          passed += 1;
          console.log(`  ok    ${test.name} (${Date.now() - started} ms)`);
        } catch (error) {
          failed += 1;
          console.error(
            `  FAIL  ${test.name}\n${indent(error instanceof Error ? (error.stack ?? error.message) : String(error))}`,
          );
        }
      }
    } finally {
      await server.stop();
    }
  }
} finally {
  await browser.close();
}
console.log(`\nbrowser: ${passed} passed, ${failed} failed`);
if (failed > 0 || passed === 0) process.exit(1);

async function runTest(browser: Browser, baseUrl: string, file: string, test: BrowserTest): Promise<void> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    reducedMotion: 'reduce',
  });
  context.setDefaultTimeout(30_000);
  const page = await context.newPage();
  const errors: string[] = [];
  const watch = (watched: Page) => watched.on('pageerror', (error) => errors.push(error.message));
  watch(page);
  const given: E2E = {
    page,
    context,
    baseUrl,
    newPage: async (size) => {
      const fresh = await context.newPage();
      watch(fresh);
      if (size !== undefined) await fresh.setViewportSize(size);
      return fresh;
    },
    axe: checkAxe,
  };
  let timer: NodeJS.Timeout | undefined;
  try {
    await Promise.race([
      test.run(given),
      new Promise<never>((_, reject) => {
        timer = setTimeout(() => reject(new Error(`not done after ${TEST_TIMEOUT_MS} ms`)), TEST_TIMEOUT_MS);
      }),
    ]);
    if (errors.length > 0) throw new Error(`errors on the page: ${errors.join('; ')}`);
  } catch (error) {
    mkdirSync('test-results', { recursive: true });
    const picture = join('test-results', `${file}-${test.name}`.replace(/[^a-z0-9]+/gi, '-').slice(0, 120));
    await page.screenshot({ path: `${picture}.png`, fullPage: true }).catch(() => undefined);
    throw error;
  } finally {
    clearTimeout(timer);
    await context.close();
  }
}

async function checkAxe(page: Page): Promise<void> {
  // From the top: what happens to lie half under the head of the page when it is scrolled is not what is asked.
  await page.evaluate(() => window.scrollTo(0, 0));
  // Through the protocol, past the page's own content policy, which rightly forbids injected scripts.
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: axeSource });
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression: `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })
      .then((found) => JSON.stringify(found.violations.map((v) => v.id + ': ' + v.help + ' @ ' +
        v.nodes.slice(0, 4).map((n) => n.target.join(' ') + ' ' + (n.failureSummary ?? '').replace(/\\s+/g, ' ').slice(0, 200)).join(' | '))))`,
    awaitPromise: true,
    returnByValue: true,
  });
  await session.detach();
  if (exceptionDetails !== undefined) throw new Error(`axe did not run: ${exceptionDetails.text}`);
  const violations = JSON.parse(result.value as string) as string[];
  if (violations.length > 0) throw new Error(`axe, ${page.url()}:\n${violations.join('\n')}`);
}

async function startServer(): Promise<{ baseUrl: string; stop: () => Promise<void> }> {
  const data = mkdtempSync(join(tmpdir(), 'pourwright-e2e-'));
  const port = await freePort();
  const child = spawn(
    process.execPath,
    [join(import.meta.dirname, '..', 'server', 'main.ts'), '--demo', '--port', String(port), '--data', data],
    { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, DATABASE_URL: '' } },
  );
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()));
  const baseUrl = `http://127.0.0.1:${port}`;
  for (let waited = 0; ; waited += 50) {
    if (child.exitCode !== null) throw new Error(`the server ended at once:\n${said}`);
    const answer = await fetch(`${baseUrl}/api/health`).catch(() => null);
    if (answer?.ok) break;
    if (waited > 20_000) throw new Error(`the server did not answer in 20 s:\n${said}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return { baseUrl, stop: () => stop(child, data) };
}

async function stop(child: ChildProcess, data: string): Promise<void> {
  if (child.exitCode === null) {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGTERM');
    const killed = setTimeout(() => child.kill('SIGKILL'), 5000);
    await ended;
    clearTimeout(killed);
  }
  rmSync(data, { recursive: true, force: true });
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}

function indent(text: string): string {
  return text
    .split('\n')
    .map((line) => `        ${line}`)
    .join('\n');
}
