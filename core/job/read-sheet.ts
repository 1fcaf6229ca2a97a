import { readCount, readFactor, readLength_m } from '#core/quantity/read.ts';
import type { SheetDocument } from './body-document.ts';
import type { Notes } from './notes.ts';

export interface SheetRead {
  readonly name: string;
  readonly length_m: number;
  readonly width_m: number;
  /** null: that of the board. */
  readonly thickness_m: number | null;
  /** Of one, in the shop's currency; null: not given. */
  readonly price: number | null;
  /** null: as many as are needed. */
  readonly count: number | null;
}

/** A sheet to cut from; null where a size is missing or a text cannot be read. */
export function readSheet(document: SheetDocument, path: string, notes: Notes): SheetRead | null {
  const before = notes.problems.length;
  const size = (key: 'length' | 'width') =>
    notes.need(`${path}.${key}`, document[key], `the ${key} of a sheet`, (text, ask) =>
      readLength_m(text, { ...ask, what: `${key} of the sheet`, min: 0.05, max: 20 }),
    );
  const length_m = size('length');
  const width_m = size('width');
  const thickness_m = notes.take(`${path}.thickness`, document.thickness, (text, ask) =>
    readLength_m(text, { ...ask, what: 'thickness of the sheet', min: 0.003, max: 0.15 }),
  );
  const price = notes.take(`${path}.price`, document.price, (text, { path: at }) =>
    readFactor(text, { path: at, what: 'price of a sheet, without a currency', min: 0, max: 1_000_000 }),
  );
  const count = notes.take(`${path}.count`, document.count, (text, { path: at }) =>
    readCount(text, { path: at, what: 'number of sheets', min: 0, max: 1000 }),
  );
  if (length_m === null || width_m === null || notes.problems.length > before) return null;
  return { name: document.name || 'sheet', length_m, width_m, thickness_m, price, count };
}
