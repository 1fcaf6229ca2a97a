import type { BrowserContext, Page } from 'playwright-core';

/** What a browser test is given. Each test has a context of its own; the tests of a file share one fresh demo shop. */
export interface E2E {
  readonly page: Page;
  readonly context: BrowserContext;
  /** `http://127.0.0.1:port`, without a slash at the end. */
  readonly baseUrl: string;
  newPage(size?: { width: number; height: number }): Promise<Page>;
  /** Fails with the list of violations of WCAG 2.2 A and AA that axe finds. */
  axe(page: Page): Promise<void>;
}

export interface BrowserTest {
  readonly name: string;
  readonly run: (t: E2E) => Promise<void>;
}
