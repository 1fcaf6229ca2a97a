/** For tests of drawings: attributes that no browser can draw (NaN, undefined, Infinity), as they stand in the markup. */
export function badAttributes(markup: string): string[] {
  return [...markup.matchAll(/ [\w-]+="[^"]*(?:NaN|undefined|Infinity)[^"]*"/g)].map((m) => m[0]);
}
