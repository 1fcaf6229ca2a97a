/**
 * Content-Disposition for a job file named after its title: letters and digits of any script, at most 60; in plain ASCII too, for
 * programs that know no `filename*` (RFC 6266, section 4.3).
 */
export function attachment(title: string): string {
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
  return `attachment; filename="${ascii}.pourwright.json"; filename*=UTF-8''${encodeURIComponent(stem)}.pourwright.json`;
}
