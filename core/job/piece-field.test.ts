import { expect, test } from 'vitest';
import { pieceField } from './piece-field.ts';
import { edgeOf, job, withPiece } from './sample.check.ts';

const { piece } = withPiece({
  edges: [edgeOf('left'), edgeOf('front')],
  cutOuts: job.piece.cutOuts.slice(0, 1),
});

/** What the readers keep from a typed piece, or a job document has no field for: led to the nearest thing there is. */
test.each([
  ['', 'piece'],
  ['bodyThickness', 'piece.bodyThickness'],
  ['outline', 'piece.outline'],
  ['outline.length', 'piece.outline.length'],
  ['outline.width', 'piece.outline.width'],
  ['outline.diameter', 'piece.outline.diameter'],
  ['outline.returnLength', 'piece.outline.returnLength'],
  ['outline.returnWidth', 'piece.outline.returnWidth'],
  ['outline.corners', 'piece.outline.corners'],
  ['outline.corners.3', 'piece.outline.corners.3.x'],
  ['outline.start', 'piece.outline'],
  ['outline.segments', 'piece.outline'],
  ['outline.segments.2.to', 'piece.outline'],
  ['outline.segments.2.bulge', 'piece.outline'],
  ['edges.front', 'piece.edges.1.edge'],
  ['edges.front.faceHeight', 'piece.edges.1.faceHeight'],
  ['edges.front.undersideReturn', 'piece.edges.1.undersideReturn'],
  ['edges.front.profile', 'piece.edges.1.profileSize'],
  ['edges.front.profile.radius', 'piece.edges.1.profileSize'],
  ['edges.front.profile.leg', 'piece.edges.1.profileSize'],
  ['edges.front.profile.factor', 'piece.edges.1.profileSize'],
  ['edges.right.profile.radius', 'piece.edges'],
  ['edges.right', 'piece.edges'],
  ['cutOuts', 'piece.cutOuts'],
  ['cutOuts.0.centre', 'piece.cutOuts.0.fromLeft'],
  ['cutOuts.0.diameter', 'piece.cutOuts.0.length'],
  ['cutOuts.0.length', 'piece.cutOuts.0.length'],
  ['cutOuts.0.width', 'piece.cutOuts.0.width'],
  ['cutOuts.0.cornerRadius', 'piece.cutOuts.0.cornerRadius'],
  ['cutOuts.0.rotation', 'piece.cutOuts.0.turned'],
  ['cutOuts.0.faceHeight', 'piece.cutOuts.0.rim'],
  ['cutOuts.0.profile.radius', 'piece.cutOuts.0.rim'],
  ['cutOuts.7.centre', 'piece.cutOuts'],
])('%s leads to %s', (path, field) => {
  expect(pieceField(path, piece)).toBe(field);
});
