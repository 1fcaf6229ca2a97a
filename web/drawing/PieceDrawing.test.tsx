import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { Piece } from '#core/piece/piece.ts';
import { badAttributes } from '#web/charts/bad-attributes.ts';
import { focusOfRow } from './focus.ts';
import { PieceDrawing } from './PieceDrawing.tsx';
import { SAMPLE_PIECES } from './sample-pieces.ts';

const vanity = SAMPLE_PIECES.vanity!;
const draw = (piece: Piece): string => renderToStaticMarkup(<PieceDrawing piece={piece} system="us" />);

describe('piece drawing', () => {
  it('describes the whole piece in words', () => {
    const label = /role="img" aria-label="([^"]+)"/.exec(draw(vanity))![1]!;
    expect(label).toContain('Rectangle 42 in by 21 1/2 in.');
    expect(label).toContain('4 corners of corner radius 3/8 in.');
    expect(label).toContain('back, wall, ');
    expect(label).toContain(
      'bowl, oval 16 in x 13 in, centre 21 in from the left and 10 in from the front, rim wrapped',
    );
    expect(label).toContain('tap, round 1 3/8 in, ');
  });

  it('describes every shape', () => {
    const starts: Record<string, string> = {
      ell: 'L counter, left-hand return: 96 in long, 25 1/2 in deep, return 70 in long and 24 in deep.',
      round: 'Round, 48 in across.',
      oval: 'Oval 72 in by 36 in.',
      corner: 'Shape with 5 corners, 42 in by 40 in overall.',
    };
    for (const [name, words] of Object.entries(starts)) expect(draw(SAMPLE_PIECES[name]!)).toContain(words);
  });

  it('writes sizes in the system asked', () => {
    const markup = renderToStaticMarkup(<PieceDrawing piece={vanity} system="metric" />);
    expect(markup).toContain('>1067 mm<');
    expect(markup).not.toContain('42 in');
  });

  it('names edges and says in a legend what their lines mean, only for kinds it shows', () => {
    const markup = draw(vanity);
    for (const words of ['front: finished', 'back: wall', 'wall: against a wall or appliance'])
      expect(markup).toContain(words);
    expect(markup).not.toContain('seam: joined');
    expect(draw(SAMPLE_PIECES.ell!)).toContain('seam: joined to another piece');
    expect(markup.match(/class="drawing-hatch"/g)!.length).toBe(2);
  });

  it('draws splashes as dashed strips along their sides, with their height', () => {
    const splashes = [
      { side: 'back', length_m: 1.0668, height_m: 0.1016, thickness_m: 0.019 },
      { side: 'left', length_m: 0.527, height_m: 0.1524, thickness_m: 0.019 },
    ] as const;
    const markup = renderToStaticMarkup(<PieceDrawing piece={vanity} system="us" splashes={splashes} />);
    expect(markup).toContain('On it: backsplash 4 in high; left side splash 6 in high.');
    expect(markup).toContain('>backsplash, 4 in high<');
    expect(markup).toContain('stands on the top: backsplash, 4 in high; left side splash, 6 in high');
    // Two strips and the one of the legend.
    expect(markup.match(/class="drawing-splash-strip"/g)).toHaveLength(3);
    expect(badAttributes(markup)).toEqual([]);
    expect(draw(vanity)).not.toContain('splash');
  });

  it('marks centres of cut-outs', () => {
    expect(draw(vanity).match(/class="drawing-centre"/g)).toHaveLength(3);
  });

  it('is a picture without a handler, and a group of reachable edges and holes with one', () => {
    expect(draw(vanity)).not.toContain('tabindex');
    const markup = renderToStaticMarkup(
      <PieceDrawing
        piece={vanity}
        system="us"
        focus={{ kind: 'edge', name: 'front' }}
        onFocus={() => undefined}
      />,
    );
    expect(markup.match(/role="button" tabindex="0"/g)).toHaveLength(7);
    // 42 in less two corners of 3/8 in, plus half the arc of each: 42 - 3/4 + 0.589 = 41.84 in.
    expect(markup).toContain('aria-pressed="true" aria-label="front, finished, 41 13/16 in along the edge"');
    expect(markup).toContain('▸ front: finished');
    expect(markup).toContain('role="group"');
  });

  it('marks the row of a table the same way', () => {
    expect(focusOfRow({ edge: 'back' }, vanity)).toEqual({ kind: 'edge', name: 'back' });
    expect(focusOfRow({ cutOut: 1 }, vanity)).toEqual({ kind: 'cut-out', name: 'tap', index: 1 });
    expect(focusOfRow({ cutOut: 9 }, vanity)).toBeNull();
    expect(focusOfRow(null, vanity)).toBeNull();
    const markup = renderToStaticMarkup(
      <PieceDrawing piece={vanity} system="us" highlight={{ cutOut: 0 }} />,
    );
    expect(markup).toContain('▸ bowl');
  });

  it('shows a piece at a glance without names or legend', () => {
    const markup = renderToStaticMarkup(<PieceDrawing piece={vanity} system="us" small />);
    expect(markup).not.toContain('drawing-name');
    expect(markup).not.toContain('drawing-legend');
    expect(markup).toContain('>42 in<');
  });

  it('draws an edge without a spec, and says so', () => {
    const { back: _, ...rest } = vanity.edges;
    const markup = draw({ ...vanity, edges: rest });
    expect(markup).toContain('back: not yet said');
    expect(markup).toContain('kind of edge not yet said');
  });

  it('says what keeps it from being drawn', () => {
    const none = draw({ ...vanity, outline: { shape: 'rectangle', length_m: -1, width_m: 0.5 } });
    expect(none).toContain('there is nothing to draw yet');
    expect(none).toContain('<li>');
    expect(none).not.toContain('<svg');
  });

  it('has no broken attribute, whatever the sizes', () => {
    const size = fc.oneof(
      fc.double({ min: 0.01, max: 12, noNaN: true }),
      fc.constantFrom(Number.NaN, 0, Number.POSITIVE_INFINITY, 1e-9, 1e9),
    );
    fc.assert(
      fc.property(size, size, size, size, fc.boolean(), (length_m, width_m, x_m, diameter_m, small) => {
        const piece: Piece = {
          ...vanity,
          outline: { shape: 'rectangle', length_m, width_m },
          cutOuts: [
            { name: 'hole', shape: 'round', diameter_m, centre: { x_m, y_m: width_m / 2 }, rim: 'dammed' },
          ],
        };
        const markup = renderToStaticMarkup(<PieceDrawing piece={piece} system="us" small={small} />);
        expect(badAttributes(markup)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});
