import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AfterPourRequest, layOutAfter } from './after-pour.ts';

const base: AfterPourRequest = {
  down_s: 600,
  done_s: 800,
  crew: 1,
  torch_s: 45,
  torchCloses_s: 2700,
  scrape_s: 30,
  scrapeEvery_s: 1200,
  gel_s: 8000,
  spare_s: 120,
};
const kinds = (request: Partial<AfterPourRequest>) =>
  layOutAfter({ ...base, ...request }).map((step) => `${step.kind} ${step.round} ${step.start_s}`);

describe('torch passes and rounds of scraping', () => {
  it('torches when hands are off, again ten minutes later, and scrapes every twenty minutes until gel', () => {
    expect(kinds({})).toEqual([
      'torch 1 800',
      'torch 2 1445',
      'scrape drips 1 1800',
      'scrape drips 2 3000',
      'scrape drips 3 4200',
      'scrape drips 4 5400',
      'scrape drips 5 6600',
      'scrape drips 6 7800',
    ]);
  });

  it('waits three minutes after spreading when there is nothing else to do', () => {
    expect(kinds({ done_s: 600 })[0]).toBe('torch 1 780');
  });

  it('torches sooner than three minutes after spreading when the window would close, but never over working hands', () => {
    expect(kinds({ done_s: 600, torchCloses_s: 900 })[0]).toBe('torch 1 735');
    expect(kinds({ done_s: 800, torchCloses_s: 900 })[0]).toBe('torch 1 800');
  });

  it('leaves the second pass out when it would end after its window', () => {
    expect(kinds({ torchCloses_s: 1489 }).filter((step) => step.startsWith('torch'))).toHaveLength(1);
    expect(kinds({ torchCloses_s: 1490 }).filter((step) => step.startsWith('torch'))).toHaveLength(2);
  });

  it('torches in the wait before the edges when it is due then, and counts the rounds of scraping from the edges', () => {
    const wait = { from_s: 600, wrapFrom_s: 1500 };
    expect(kinds({ done_s: 1600, wait }).slice(0, 3)).toEqual([
      'torch 1 780',
      'torch 2 1425',
      'scrape drips 1 2700',
    ]);
    expect(kinds({ done_s: 1600, wait: { from_s: 600, wrapFrom_s: 820 } })[0]).toBe('torch 1 1600');
    expect(kinds({ done_s: 1600, wait: { from_s: 600, wrapFrom_s: 1469 } })[1]).toBe('torch 2 1600');
  });

  it('scrapes before the second pass when waiting for it would be past gel', () => {
    expect(
      kinds({
        down_s: 100,
        done_s: 100,
        torch_s: 30,
        scrape_s: 245,
        scrapeEvery_s: 566,
        torchCloses_s: 940,
        gel_s: 1031,
      }),
    ).toEqual(['torch 1 280', 'scrape drips 1 665', 'torch 2 910']);
  });

  it('always scrapes once, before an early gel if it can', () => {
    expect(kinds({ gel_s: 1500 })).toContain('scrape drips 1 1350');
    expect(kinds({ gel_s: 700 })).toContain('scrape drips 1 845');
  });

  it('has nothing to scrape without wrapped edges', () => {
    expect(kinds({ scrape_s: 0 }).some((step) => step.startsWith('scrape'))).toBe(false);
  });

  it('asks one thing at a time, and a later window never takes slack from the first of each kind', () => {
    const arbitrary = fc.record({
      down_s: fc.integer({ min: 100, max: 2000 }),
      hands: fc.integer({ min: 0, max: 1200 }),
      crew: fc.constantFrom(1, 2, 3),
      torch_s: fc.integer({ min: 30, max: 300 }),
      scrape_s: fc.integer({ min: 0, max: 300 }),
      scrapeEvery_s: fc.integer({ min: 300, max: 2400 }),
      torchCloses_s: fc.integer({ min: 100, max: 8000 }),
      gel_s: fc.integer({ min: 100, max: 20_000 }),
      more: fc.integer({ min: 0, max: 3000 }),
    });
    fc.assert(
      fc.property(arbitrary, ({ hands, more, ...rest }) => {
        const request = { ...base, ...rest, done_s: rest.down_s + hands };
        const steps = layOutAfter(request);
        for (const a of steps) {
          expect(a.start_s).toBeGreaterThanOrEqual(request.done_s);
          expect(a.opens_s).toBeLessThanOrEqual(a.start_s);
          for (const b of steps)
            if (a !== b && a.person === b.person)
              expect(a.end_s <= b.start_s || b.end_s <= a.start_s).toBe(true);
        }
        const slack = (at: AfterPourRequest) => {
          const placed = layOutAfter(at);
          const torch = placed.find((step) => step.kind === 'torch' && step.round === 1)!;
          const scrape = placed.find((step) => step.kind === 'scrape drips' && step.round === 1);
          return [at.torchCloses_s - torch.end_s, scrape === undefined ? 0 : at.gel_s - scrape.end_s];
        };
        const [torch, scrape] = slack(request);
        const [torchLater] = slack({ ...request, torchCloses_s: request.torchCloses_s + more });
        expect(torchLater!).toBeGreaterThanOrEqual(torch!);
        const [, scrapeLater] = slack({ ...request, gel_s: request.gel_s + more });
        expect(scrapeLater!).toBeGreaterThanOrEqual(scrape!);
      }),
    );
  });
});
