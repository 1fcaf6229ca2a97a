/**
 * Content-Disposition for a file named after the title of a job: letters and digits of any script, at most 60; in plain ASCII too, for
 * programs that know no `filename*` (RFC 6266, section 4.3).
 */
export function attachment(title: string, ending = '.pourwright.json'): string {
  const name = [
    ...title
      .normalize('NFC')
      .toWellFormed()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-'),
  ]
    .slice(0, 60)
    .join('');
  const stem = name.replaceAll(/^-+|-+$/g, '') || 'job';
  const ascii = stem.replaceAll(/[^A-Za-z0-9-]+/g, '').replaceAll(/^-+|-+$/g, '') || 'job';
  return `attachment; filename="${ascii}${ending}"; filename*=UTF-8''${encodeURIComponent(stem)}${ending}`;
}
