import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { SAMPLE_PIECES } from '#web/drawing/sample-pieces.ts';
import { DrawingAnswer } from './DrawingAnswer.tsx';
import { PieceFiles } from './PieceFiles.tsx';
import { readDrawing, tooLarge } from './read-drawing.ts';
import { drawingText, WAYS } from './save-drawing.ts';

const vanity = SAMPLE_PIECES.vanity!;
const nothing = () => undefined;
const show = (name: string, text: string, unit?: 'in') =>
  renderToStaticMarkup(
    <DrawingAnswer
      read={readDrawing(name, text, unit === undefined ? {} : { unit })}
      system="us"
      onUnit={nothing}
      onUse={nothing}
    />,
  );

describe('drawing files of a piece', () => {
  it('shows the size and the cut-outs of what every way of saving wrote', () => {
    for (const way of WAYS) {
      const markup = show(`x.${way.ending}`, drawingText(vanity, way, 'us'));
      expect(markup).toContain('42 in by 21 1/2 in, 3 cut-outs');
      expect(markup).toContain('Use it');
    }
  });

  it('asks for the unit with one button a choice, and takes the answer', () => {
    const svg = '<svg width="42" height="21"><rect width="42" height="21"/></svg>';
    const asked = show('x.svg', svg);
    expect(asked).toContain('Which is it?');
    expect(asked.match(/<button/g)).toHaveLength(4);
    expect(show('x.svg', svg, 'in')).toContain('42 in by 21 in, 0 cut-outs; read in in, as you said.');
  });

  it('says in place what is wrong, and refuses large files before reading them', () => {
    const markup = show('x.dxf', 'not a drawing');
    expect(markup).toContain('role="alert"');
    expect(markup).not.toContain('Use it');
    expect(tooLarge(10_000_001)?.ok).toBe(false);
    expect(tooLarge(10_000_000)).toBeNull();
  });

  it('saves nothing while the piece is not sound', () => {
    const saves = (markup: string) => markup.match(/<button[^>]*disabled=""[^>]*>Save as/g) ?? [];
    expect(saves(renderToStaticMarkup(<PieceFiles name="a" system="us" onUse={nothing} />))).toHaveLength(3);
    expect(
      saves(renderToStaticMarkup(<PieceFiles piece={vanity} name="a" system="us" onUse={nothing} />)),
    ).toHaveLength(0);
  });
});
