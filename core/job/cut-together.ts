/** The parts of all pieces of a job that come from one board of one thickness, to be cut out of the same sheets. */
import { type BoardName, SAME_THICKNESS_M } from '#core/piece/body/board-names.ts';
import type { BodyPart } from '#core/piece/body/body.ts';
import type { CutPart, CuttingOptions, StockSheet } from '#core/piece/cutting/cutting.ts';
import type { Offcut } from '#core/shelf/offcuts.ts';
import type { BodyWork } from './body-work.ts';

export interface PieceToCut {
  /** Of the piece in the job, and as it is called. */
  readonly id: string;
  readonly name: string;
  readonly board: BoardName;
  readonly work: BodyWork;
  /** All parts of its body, of whatever thickness. */
  readonly parts: readonly BodyPart[];
}

export interface CutTogether {
  readonly board: BoardName;
  readonly thickness_m: number;
  /** Ids of the pieces whose parts are among them. */
  readonly pieces: readonly string[];
  /** Named by their piece: "counter: field". */
  readonly parts: readonly CutPart[];
  readonly stock: readonly StockSheet[];
  /** For each of `stock`: the offcut it is, null for a sheet to buy. */
  readonly offcuts: readonly (Offcut | null)[];
  readonly cutting: CuttingOptions;
  /** Every sheet has a price. */
  readonly priced: boolean;
}

/**
 * One list for each board and thickness a body is built of, in the order of the pieces. A splash of another thickness goes with the
 * pieces built of that board, where there are any. Where pieces differ, the widest saw cut and trim, and the larger of what is
 * kept, hold for all; a sheet that several pieces name is there once.
 */
export function cutTogether(pieces: readonly PieceToCut[]): CutTogether[] {
  const groups: PieceToCut[][] = [];
  for (const piece of pieces) {
    const same = groups.find(([first]) => first!.board === piece.board && alike(first!, thicknessOf(piece)));
    if (same === undefined) groups.push([piece]);
    else same.push(piece);
  }
  return groups.map((group) => {
    const [first] = group;
    const { board } = first!;
    const thickness_m = thicknessOf(first!);
    const from = pieces
      .filter((piece) => piece.board === board)
      .map((piece) => ({
        ...piece,
        parts: piece.parts.filter((part) => Math.abs(part.thickness_m - thickness_m) <= SAME_THICKNESS_M),
      }))
      .filter(({ parts }) => parts.length > 0);
    const works = group.map(({ work }) => work);
    const priced = works.every((work) => work.priced);
    const sheets = stockOf(works, priced);
    return {
      board,
      thickness_m,
      pieces: from.map(({ id }) => id),
      parts: from.flatMap(({ name, parts }) =>
        parts.map(
          ({ name: part, length_m, width_m, count, grain }): CutPart => ({
            ...{ name: `${name}: ${part}`, length_m, width_m, count, grain },
          }),
        ),
      ),
      stock: sheets.map(({ stock }) => stock),
      offcuts: sheets.map(({ offcut }) => offcut),
      cutting: widest(works.map(({ cutting }) => cutting)),
      priced,
    };
  });
}

const thicknessOf = ({ work }: PieceToCut): number => work.boardThickness_m;

const alike = (piece: PieceToCut, thickness_m: number): boolean =>
  Math.abs(thicknessOf(piece) - thickness_m) <= SAME_THICKNESS_M;

interface Sheet {
  readonly stock: StockSheet;
  readonly offcut: Offcut | null;
}

function stockOf(works: readonly BodyWork[], priced: boolean): Sheet[] {
  const found = new Map<string, Sheet>();
  for (const { stock, offcuts } of works)
    stock.forEach(({ price, ...sheet }, index) => {
      const offcut = offcuts[index] ?? null;
      const cost = priced ? price : undefined;
      const key = offcut?.id ?? JSON.stringify([sheet.name, sheet.length_m, sheet.width_m, cost]);
      const known = found.get(key)?.stock;
      // Without a count there is no limit to it.
      const counts = [known, sheet].flatMap((each) => (each === undefined ? [] : [each.count]));
      const { count: _, ...rest } = sheet;
      found.set(key, {
        offcut,
        stock: {
          ...rest,
          ...(cost === undefined ? {} : { price: cost }),
          ...(counts.includes(undefined) ? {} : { count: Math.max(...counts.map((count) => count ?? 0)) }),
        },
      });
    });
  // What lies on the shelf before what has to be bought, as for one piece.
  return [...found.values()].sort((a, b) => Number(a.offcut === null) - Number(b.offcut === null));
}

function widest(all: readonly CuttingOptions[]): CuttingOptions {
  const most = (value: (each: CuttingOptions) => number | undefined): number | undefined => {
    const said = all.map(value).filter((each) => each !== undefined);
    return said.length === 0 ? undefined : Math.max(...said);
  };
  const [kerf_m, trim_m] = [most((each) => each.kerf_m), most((each) => each.trim_m)];
  const [length_m, width_m] = [most((each) => each.keep?.length_m), most((each) => each.keep?.width_m)];
  return {
    ...all[0],
    ...(kerf_m === undefined ? {} : { kerf_m }),
    ...(trim_m === undefined ? {} : { trim_m }),
    ...(length_m === undefined || width_m === undefined ? {} : { keep: { length_m, width_m } }),
  };
}
