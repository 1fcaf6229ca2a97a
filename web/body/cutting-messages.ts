import type { CutPart, CuttingOptions, CuttingPlan, StockSheet } from '#core/piece/cutting/cutting.ts';
import type { Result } from '#core/quantity/problem.ts';

export interface CuttingRequest {
  readonly parts: readonly CutPart[];
  readonly stock: readonly StockSheet[];
  readonly options: CuttingOptions;
}

export interface CuttingAsk {
  readonly number: number;
  readonly request: CuttingRequest;
}

export type CuttingReply =
  | { readonly number: number; readonly plan: Result<CuttingPlan> }
  | { readonly number: number; readonly failed: string };
