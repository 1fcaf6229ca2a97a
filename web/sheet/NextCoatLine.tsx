import type { CoatForecast } from '#core/job/forecast.ts';

/** Between two coats: does the next one land while this one takes it? A word, and the sentences behind it. */
export function NextCoatLine({ next }: { readonly next: CoatForecast['nextCoat'] }) {
  if (next === null) return null;
  return (
    <p className="next-coat" data-verdict={next.verdict}>
      <strong>Next coat: {next.verdict}.</strong> {next.says}
    </p>
  );
}
