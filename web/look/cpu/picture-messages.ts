/** What is asked of the picture workers, and what they answer. */
import type { Scene } from '#core/look/render/scene.ts';

export type PictureAsk =
  | { readonly kind: 'scene'; readonly number: number; readonly scene: Scene }
  | { readonly kind: 'rows'; readonly number: number; readonly from: number; readonly to: number };

export type PictureReply =
  | {
      readonly kind: 'rows';
      readonly number: number;
      readonly from: number;
      readonly to: number;
      readonly pixels: Uint8ClampedArray<ArrayBuffer>;
    }
  | { readonly kind: 'failed'; readonly number: number; readonly message: string };
