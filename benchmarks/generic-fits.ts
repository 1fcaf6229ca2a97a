/**
 * Writes core/resin/generic-fits.ts: the fits of the two generic cards as plain data, so that no page and no forecast waits for
 * them. Run after a change of the model, the priors or the two labels: node benchmarks/generic-fits.ts && npx biome format --write core/resin/generic-fits.ts
 */
import { writeFileSync } from 'node:fs';
import { fitCard } from '#core/resin/fit-card.ts';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from '#core/resin/generic-documents.ts';
import { readCard } from '#core/resin/read-card.ts';

const short = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(6)) : value;

const fits = [QUICK_DOCUMENT, REGULAR_DOCUMENT].map((document) => {
  const read = readCard(document);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { posterior, spread, account } = fitCard(read.value);
  return JSON.stringify({ posterior, spread, account }, short, 1);
});
writeFileSync(
  new URL('../core/resin/generic-fits.ts', import.meta.url),
  `import type { CardAccount, ResinPosterior, ResinSpread } from './model.ts';

interface GenericFit {
  readonly posterior: ResinPosterior;
  readonly spread: ResinSpread;
  readonly account: CardAccount;
}

/** What \`fitCard\` makes of the two generic documents, to six digits; written by benchmarks/generic-fits.ts. */
export const QUICK_FIT: GenericFit = ${fits[0]};

export const REGULAR_FIT: GenericFit = ${fits[1]};
`,
);
