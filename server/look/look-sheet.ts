/** What the printed sheets of a look are made from. */
import type { Look } from '#core/look/look.ts';
import type { LookDocument } from '#core/look/look-document.ts';
import type { LaidPiece } from '#core/look/panels.ts';
import type { LinearRgb } from '#core/look/srgb.ts';
import type { CupRecipe } from '#core/mix/coat.ts';
import type { LookPour } from '#core/mix/look-pours.ts';
import type { Paper } from '#core/piece/set-out/paper.ts';
import type { System } from '#core/quantity/units.ts';
import type { SheetWords } from '../set-out/sheet-head.ts';

export interface SheetColour {
  readonly key: string;
  /** As on the cups. */
  readonly label: string;
  readonly light: LinearRgb;
  /** Of the coat as poured, 0 to 1. */
  readonly share: number;
  /** "mica powder, 3 %" or nothing. */
  readonly colourant: string;
}

export interface LookSheet extends SheetWords {
  readonly paper: Paper;
  readonly system: System;
  readonly coat: string;
  readonly look: Look;
  readonly document: LookDocument;
  /** In the order of the tops among the look's panels. */
  readonly pieces: readonly LaidPiece[];
  readonly colours: readonly SheetColour[];
  /** Twelve hex digits: the same look on the same piece, the same mark. */
  readonly mark: string;
  /** Empty while the coat cannot be planned. */
  readonly cups: readonly CupRecipe[];
  readonly pours: readonly LookPour[];
}
