import type { JobDocument } from '#core/job/document.ts';

/** A file name anyone's computer takes. */
export function fileNameOf(document: JobDocument): string {
  const words = `${document.title} ${document.customer.name}`
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\w]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60);
  return `${words === '' ? 'job' : words}.job.json`;
}

/** The job as a file: what any other installation imports. */
export function saveAsFile(job: JobDocument): void {
  const url = URL.createObjectURL(
    new Blob([`${JSON.stringify(job, null, 2)}\n`], { type: 'application/json' }),
  );
  const link = window.document.createElement('a');
  link.href = url;
  link.download = fileNameOf(job);
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
