/** A body ready to be listed, weighed and cut: what the job says, the rest from the shop, the sheets and offcuts that fit its board. */
import { BOARD_WEIGHTS, type BoardName, SAME_THICKNESS_M } from '#core/piece/body/board-names.ts';
import type { BodyPart } from '#core/piece/body/body.ts';
import type { AdviceOptions } from '#core/piece/body/body-advice.ts';
import type { WeightOptions } from '#core/piece/body/body-weight.ts';
import type { CuttingOptions, StockSheet } from '#core/piece/cutting/cutting.ts';
import { lengthText, rangeText } from '#core/piece/length-text.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import type { Offcut } from '#core/shelf/offcuts.ts';
import { Notes } from './notes.ts';
import type { BodyRead } from './read-body.ts';
import type { SplashPart } from './read-piece-splash.ts';
import { readSheet, type SheetRead } from './read-sheet.ts';
import { BODY_LIMITS, type ShopBody } from './shop-body.ts';

export interface BodyAsk {
  readonly board: BoardName;
  /** null: the shop's usual one. */
  readonly boardThickness_m: number | null;
  readonly splashes: readonly SplashPart[];
  readonly body: BodyRead;
  readonly shop: ShopBody;
  /** All of the shelf; those of another board are left out here. */
  readonly offcuts: readonly Offcut[];
  /** Cured resin of all coats on the piece, 0 while it is not known. */
  readonly resin_kg: number;
}

export interface BodyWork {
  readonly options: WeightOptions & AdviceOptions;
  readonly boardThickness_m: number;
  readonly stock: readonly StockSheet[];
  /** For each of `stock`: the offcut it is, null for a sheet to buy. */
  readonly offcuts: readonly (Offcut | null)[];
  readonly cutting: CuttingOptions;
  /** Every sheet has a price, so that the cheapest plan is one in money and not in area. */
  readonly priced: boolean;
  /** Names of sheets of this board in another thickness. */
  readonly otherThickness: readonly string[];
  /** Floor to top is still to be typed before knee clearance and height can be told. */
  readonly needsTopHeight: boolean;
}

/** Problem: a board too thick to build a body of. Everything in `body` must be sound. */
export function bodyWork(ask: BodyAsk): Result<BodyWork> {
  const { body, shop, board } = ask;
  const boardThickness_m = ask.boardThickness_m ?? shop.boardThickness_m;
  const [least, most] = BODY_LIMITS.boardThickness_m;
  if (boardThickness_m < least || boardThickness_m > most)
    return bad({
      path: 'piece.boardThickness',
      code: 'body.board-thickness',
      message: 'Parts cannot be listed for a board of this thickness.',
      read: lengthText(boardThickness_m),
      allowed: rangeText(least, most),
    });
  const figures = { ...shop, ...body.figures };
  const weights = BOARD_WEIGHTS[board];
  const { accessible } = body;
  const same = (thickness_m: number) => Math.abs(thickness_m - boardThickness_m) <= SAME_THICKNESS_M;
  const sheets = (body.sheets ?? shopSheets(shop, board)).filter(({ count }) => count !== 0);
  const fitting = sheets.filter(({ thickness_m }) => same(thickness_m ?? boardThickness_m));
  const offcuts = body.useOffcuts
    ? ask.offcuts.filter((each) => each.board === board && same(each.thickness_m))
    : [];
  const priced = fitting.length > 0 && fitting.every(({ price }) => price !== null);
  return good({
    options: {
      boardThickness_m,
      stripWidth_m: figures.stripWidth_m,
      oversize_m: figures.oversize_m,
      longest_m: figures.longest_m,
      screwLength_m: figures.screwLength_m,
      grained: weights.grained,
      grain: body.grain,
      splashes: ask.splashes.map(({ side, length_m, height_m, thickness_m }) => ({
        ...{ name: `${side} splash`, length_m, height_m },
        ...(same(thickness_m) ? {} : { thickness_m }),
      })),
      density_kg_m3: body.density_kg_m3 ?? weights.density_kg_m3,
      // A density that was typed is of this very board.
      densitySpread: body.density_kg_m3 === null ? weights.spread : 0.03,
      resin_kg: ask.resin_kg,
      overhangs: body.overhangs,
      ...(accessible?.topHeight_m == null
        ? {}
        : {
            accessible: {
              topHeight_m: accessible.topHeight_m,
              ...(accessible.kneeWidth_m === null ? {} : { kneeWidth_m: accessible.kneeWidth_m }),
            },
          }),
    },
    boardThickness_m,
    stock: [
      ...offcuts.map(
        ({ length_m, width_m }): StockSheet => ({
          ...{ name: 'offcut', length_m, width_m, count: 1, offcut: true },
        }),
      ),
      ...fitting.map(
        (sheet): StockSheet => ({
          ...{ name: sheet.name, length_m: sheet.length_m, width_m: sheet.width_m },
          ...(sheet.count === null ? {} : { count: sheet.count }),
          ...(priced && sheet.price !== null ? { price: sheet.price } : {}),
        }),
      ),
    ],
    offcuts: [...offcuts, ...fitting.map(() => null)],
    cutting: {
      kerf_m: figures.kerf_m,
      trim_m: figures.trim_m,
      keep: { length_m: figures.keepLength_m, width_m: figures.keepWidth_m },
    },
    priced,
    otherThickness: sheets
      .filter(({ thickness_m }) => !same(thickness_m ?? boardThickness_m))
      .map(({ name }) => name),
    needsTopHeight: accessible !== null && accessible.topHeight_m === null,
  });
}

/** Parts that are cut from the board of the body, and those that are of another thickness. */
export function partsByBoard(parts: readonly BodyPart[], boardThickness_m: number) {
  const own = (part: BodyPart) => Math.abs(part.thickness_m - boardThickness_m) <= SAME_THICKNESS_M;
  return { own: parts.filter(own), others: parts.filter((part) => !own(part)) };
}

function shopSheets(shop: ShopBody, board: BoardName): SheetRead[] {
  const notes = new Notes();
  return shop.sheets
    .filter((sheet) => sheet.board === board)
    .flatMap(({ board: _, ...sheet }, i) => readSheet(sheet, `sheets.${i}`, notes) ?? []);
}
