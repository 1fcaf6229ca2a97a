import type { CutOutDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { readCutOut } from '#core/job/read-cut-out.ts';
import { checkOutline } from '#core/piece/check-outline.ts';
import { cutOutSize } from '#core/piece/cut-out-size.ts';
import { useSheet } from '../context.tsx';

/** Length or width of a sink template, as its drawing gives it; nobody types it. */
export function TemplateSize({
  cutOut,
  of,
}: {
  readonly cutOut: CutOutDocument;
  readonly of: 'length_m' | 'width_m';
}) {
  const { speak } = useSheet();
  // Its size does not hang on where it stands.
  const read = readCutOut({ ...cutOut, fromLeft: '0 mm', fromFront: '0 mm' }, '', new Notes());
  if (read?.shape !== 'template' || checkOutline(read.outline).length > 0) return 'not readable';
  return speak.length(cutOutSize(read)[of]);
}
