/** The PDFs of a piece from the server. */
import type { PaperWord } from '#core/piece/set-out/paper.ts';
import type { System } from '#core/quantity/units.ts';
import { api, refusal } from '#web/api/http.ts';

export type SheetKind = 'set-out' | 'template';

export interface PdfFile {
  readonly name: string;
  readonly blob: Blob;
}

/** Throws AnswerError with the problems of the piece, or UnreachableError. */
export async function getPdf(
  jobId: string,
  kind: SheetKind,
  paper: PaperWord,
  system: System,
  /** Id; left out: all pieces of the job on set-out sheets, the first one on a template. */
  piece?: string,
): Promise<PdfFile> {
  const job = api.jobs[':id'];
  const param = { id: jobId };
  const of = piece === undefined ? {} : { piece };
  const response =
    kind === 'set-out'
      ? await job['set-out.pdf'].$get({ param, query: { paper, units: system, ...of } })
      : await job['template.pdf'].$get({ param, query: { paper, ...of } });
  if (response.status !== 200) throw await refusal(response);
  return {
    name: nameIn(response.headers.get('content-disposition')) ?? `${kind}.pdf`,
    blob: await response.blob(),
  };
}

/** The file name a Content-Disposition carries: `filename*` before `filename` (RFC 6266, section 4.3). */
export function nameIn(disposition: string | null): string | null {
  if (disposition === null) return null;
  const extended = /filename\*=UTF-8''([^;]+)/i.exec(disposition)?.[1];
  if (extended !== undefined)
    try {
      return decodeURIComponent(extended);
    } catch {
      // Not what the standard says; the plain name serves.
    }
  return /filename="([^"]+)"/i.exec(disposition)?.[1] ?? null;
}
