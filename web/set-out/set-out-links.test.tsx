import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { usualPaper } from '#core/piece/set-out/paper.ts';
import { AnswerError, UnreachableError } from '#web/api/http.ts';
import { getPdf, nameIn } from './get-pdf.ts';
import { SetOutLinks } from './SetOutLinks.tsx';
import { SetOutTrouble } from './SetOutTrouble.tsx';

afterEach(() => vi.unstubAllGlobals());

/** The server's answer, and the addresses that were asked. */
function answering(make: () => Response): string[] {
  const asked: string[] = [];
  vi.stubGlobal('fetch', (input: RequestInfo | URL) => {
    asked.push(String(input instanceof Request ? input.url : input));
    return Promise.resolve(make());
  });
  return asked;
}

describe('the links to the sheets', () => {
  it('offer both sheets, with the paper of the units chosen', () => {
    const us = renderToStaticMarkup(<SetOutLinks jobId="1" system="us" />);
    expect(us).toContain('Set-out sheet (PDF)');
    expect(us).toContain('True-scale template (PDF)');
    expect(us).toMatch(/<option value="letter" selected="">/);
    expect(renderToStaticMarkup(<SetOutLinks jobId="1" system="metric" />)).toMatch(
      /<option value="a4" selected="">/,
    );
    expect([usualPaper('us'), usualPaper('metric')]).toEqual(['letter', 'a4']);
  });

  it('wait while something is not saved, and say so', () => {
    const html = renderToStaticMarkup(<SetOutLinks jobId="1" system="us" unsaved />);
    expect(html.match(/disabled=""/g)?.length).toBe(2);
    expect(html).toContain('the sheets come from the saved job');
  });

  it('ask for paper and units, and take the name from the answer', async () => {
    const asked = answering(
      () =>
        new Response('%PDF-1.3', {
          headers: {
            'content-type': 'application/pdf',
            'content-disposition': `attachment; filename="K-set-out.pdf"; filename*=UTF-8''K%C3%BC-set-out.pdf`,
          },
        }),
    );
    const file = await getPdf('j', 'set-out', 'a4', 'metric');
    await getPdf('j', 'template', 'letter', 'us');
    expect(asked).toEqual([
      '/api/jobs/j/set-out.pdf?paper=a4&units=metric',
      '/api/jobs/j/template.pdf?paper=letter',
    ]);
    expect(file.name).toBe('Kü-set-out.pdf');
    expect(await file.blob.text()).toBe('%PDF-1.3');
  });

  it('pass on what the piece lacks', async () => {
    const problem = { path: 'piece.outline', code: 'piece.missing', message: 'Still needed is the shape.' };
    answering(() =>
      Response.json(
        { error: { id: '1', code: 'set-out.piece', message: 'Not yet.' }, problems: [problem] },
        { status: 422 },
      ),
    );
    const error = await getPdf('j', 'template', 'a4', 'us').catch((e: unknown) => e);
    expect(error).toBeInstanceOf(AnswerError);
    expect((error as AnswerError).problems).toEqual([problem]);
  });

  it('read the plain name where the other is absent or broken', () => {
    expect(nameIn('attachment; filename="a.pdf"')).toBe('a.pdf');
    expect(nameIn(`attachment; filename="a.pdf"; filename*=UTF-8''%E0%A4%A`)).toBe('a.pdf');
    expect(nameIn('inline')).toBeNull();
    expect(nameIn(null)).toBeNull();
  });
});

describe('what went wrong with a sheet', () => {
  const problem = {
    path: 'piece.outline',
    code: 'piece.missing',
    message: 'Still needed is the shape.',
    allowed: 'any shape',
  };

  it('lists the problems of the piece, and offers no second try at the same', () => {
    const html = renderToStaticMarkup(
      <SetOutTrouble
        what="Set-out sheet"
        error={new AnswerError(422, 'Not yet.', [problem])}
        retry={() => {}}
      />,
    );
    expect(html).toContain('role="alert"');
    expect(html).toContain('Set-out sheet: Not yet.');
    expect(html).toContain('Still needed is the shape.');
    expect(html).toContain('Allowed: any shape.');
    expect(html).not.toContain('Try again');
  });

  it('offers to try again when no answer came', () => {
    const html = renderToStaticMarkup(
      <SetOutTrouble what="Set-out sheet" error={new UnreachableError(null)} retry={() => {}} />,
    );
    expect(html).toContain('does not answer');
    expect(html).toContain('Try again');
  });
});
