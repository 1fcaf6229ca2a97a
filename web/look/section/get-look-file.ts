/** The printed sheets and the picture of a look from the server. */
import type { PaperWord } from '#core/piece/set-out/paper.ts';
import type { System } from '#core/quantity/units.ts';
import { api, refusal } from '#web/api/http.ts';
import { nameIn, type PdfFile } from '#web/set-out/get-pdf.ts';

export const LOOK_FILES = ['approval', 'pour map', 'full size', 'picture'] as const;
export type LookFile = (typeof LOOK_FILES)[number];

export interface LookFileAsk {
  readonly jobId: string;
  readonly coat: string;
  readonly paper: PaperWord;
  readonly system: System;
}

/** Throws AnswerError with the problems of the look, or UnreachableError. */
export async function getLookFile(file: LookFile, ask: LookFileAsk): Promise<PdfFile> {
  const { coat, paper, system: units } = ask;
  const look = api.jobs[':id'].look;
  const sheet = { param: { id: ask.jobId }, query: { coat, paper, units } };
  const response =
    file === 'approval'
      ? await look['approval.pdf'].$get(sheet)
      : file === 'pour map'
        ? await look['pour-map.pdf'].$get(sheet)
        : file === 'full size'
          ? await look['full-size.pdf'].$get(sheet)
          : await look['picture.png'].$get({ param: sheet.param, query: { coat } });
  if (response.status !== 200) throw await refusal(response);
  const usual = file === 'picture' ? 'look.png' : `${file.replace(' ', '-')}.pdf`;
  return {
    name: nameIn(response.headers.get('content-disposition')) ?? usual,
    blob: await response.blob(),
  };
}
