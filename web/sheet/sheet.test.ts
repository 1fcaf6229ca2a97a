import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { emptyJob, type OutlineDocument } from '#core/job/document.ts';
import { piecesOf, withPiece } from '#core/job/pieces.ts';
import { edgeNames } from '#core/piece/outline.ts';
import { ellCounter, hallTable, vanityVesselSink } from '#examples/jobs.ts';
import { speaker } from '#web/units/speak.ts';
import { newCoat } from './coats/new-coat.ts';
import { sayPath, sayValue } from './conflict-words.ts';
import { edgeNamesOf, withEdges, withShape } from './piece/outline-forms.ts';
import { listed } from './Section.tsx';
import {
  agreeNeeds,
  agreeSummary,
  coatsSummary,
  firstWords,
  mixSummary,
  pieceNeeds,
  pieceSummary,
  togetherSummary,
} from './summaries.ts';

describe('the folded lines of the sheet', () => {
  const forecast = computeJob(vanityVesselSink);
  const us = speaker('us');

  it('hold real content', () => {
    expect(agreeSummary(vanityVesselSink, us)).toContain(vanityVesselSink.customer.name);
    expect(pieceSummary(vanityVesselSink, forecast, us)).toBe(
      '42 in x 21 1/2 in, 6.3 sq ft, 3 finished edges (7.0 ft), 1 cut-out',
    );
    expect(coatsSummary(vanityVesselSink, (id) => id)).toContain('4 fl oz/sq ft');
    expect(mixSummary(forecast, us)).toMatch(/\d+ g in 3 cups; .* in 1 cup$/);
  });

  it('change their figures with the system', () => {
    expect(pieceSummary(vanityVesselSink, forecast, speaker('metric'))).toBe(
      '1067 mm x 546 mm, 0.58 m², 3 finished edges (2.15 m), 1 cut-out',
    );
  });

  it('name every piece of several, what they come to, and which one lacks what', () => {
    const shelf = { ...ellCounter.piece, name: 'shelf' };
    const several = withPiece(withPiece(vanityVesselSink, 'a', shelf), 'b');
    const all = computeJob({ ...several, coats: [] });
    expect(pieceSummary(several, all, us)).toMatch(
      /^piece 1 42 in x 21 1\/2 in; shelf [\d /]+ in x [\d /]+ in; piece 3 no sizes yet$/,
    );
    expect(togetherSummary(all, us)).toMatch(/\(shelf\), without 1 piece that cannot be measured yet\.$/);
    expect(pieceNeeds(piecesOf(several), all.missing)).toEqual([
      'piece 3: the thickness of the body',
      'piece 3: the shape and size of the piece',
    ]);
  });

  it('say what an empty job needs', () => {
    expect(agreeNeeds(emptyJob())).toEqual(['a customer', 'a promised day', 'the look in words']);
    expect(pieceSummary(emptyJob(), null, us)).toBe('');
    expect(listed(['a', 'b', 'b', 'c'])).toBe('a, b and c');
    expect(listed(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, c and 2 more');
    expect(firstWords('one two three', 2)).toBe('one two …');
  });
});

describe('the outline form', () => {
  const ell = ellCounter.piece.outline as Extract<OutlineDocument, { shape: 'ell' }>;

  it.each(['left', 'right'] as const)('names the edges of an L as the geometry does (%s)', (side) => {
    const names = edgeNames({
      shape: 'ell',
      side,
      length_m: 2.4,
      width_m: 0.6,
      returnLength_m: 1.8,
      returnWidth_m: 0.6,
    });
    expect([...edgeNamesOf({ ...ell, side })].sort()).toEqual([...names].sort());
  });

  it('keeps sizes and edges that the next shape has too', () => {
    const ellipse = withShape(vanityVesselSink.piece, 'ellipse');
    expect(ellipse.outline).toEqual({ shape: 'ellipse', length: '42 in', width: '21 1/2 in' });
    expect(ellipse.edges[0]).toMatchObject({ edge: 'rim', kind: 'finished' });
    const back = withShape(ellipse, 'rectangle');
    expect(back.outline).toMatchObject({ length: '42 in', width: '21 1/2 in' });
    expect(back.edges.slice(0, 4)).toEqual(vanityVesselSink.piece.edges);
  });

  it('gives every edge of an undescribed piece a row', () => {
    expect(withEdges({ ...vanityVesselSink.piece, edges: [] }).edges.map((edge) => edge.edge)).toEqual([
      'front',
      'right',
      'back',
      'left',
    ]);
  });

  it.each(['us', 'metric'] as const)('starts coats with films that can be planned (%s)', (system) => {
    for (const kind of ['seal coat', 'colour coat', 'clear buffer', 'flood coat'] as const) {
      const coat = { ...newCoat(kind, 'id', undefined, system), resin: 'regular-50' };
      const forecast = computeJob({ ...vanityVesselSink, coats: [coat] });
      expect(forecast.problems).toEqual([]);
      expect(forecast.coats[0]!.plan).not.toBeNull();
    }
  });
});

describe('a conflict in words', () => {
  it('names the place as the form does', () => {
    expect(sayPath(['coats', 0, 'film'], vanityVesselSink)).toBe(
      `Coats, ${vanityVesselSink.coats[0]!.name}, film on the top`,
    );
    expect(sayPath(['piece', 'edges', 2, 'kind'], vanityVesselSink)).toBe('Piece, edges, back, kind');
    expect(sayPath(['agreed', 'handOver'], hallTable)).toBe('Agreed, promised day');
  });

  it('says values as text, and nothing as empty', () => {
    expect(sayValue('')).toBe('empty');
    expect(sayValue(undefined)).toBe('not there');
    expect(sayValue([])).toBe('none');
    expect(sayValue({ shape: 'round', diameter: '40 in' })).toBe('shape round, diameter 40 in');
  });
});
