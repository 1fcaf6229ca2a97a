/**
 * core/piece names what is wrong by its own structure (`edges.return front.profile.radius`, `cutOuts.0.centre`); the form
 * has lists of fields (`piece.edges.2.profileSize`, `piece.cutOuts.0.fromLeft`). This is the way from one to the other.
 */
import type { Problem } from '#core/quantity/problem.ts';
import type { PieceDocument } from './document.ts';

/**
 * The same problem with the path of the field it was typed in. An edge that is not in the document is made as most are; what is
 * wrong with it stands at the list of edges, and its name goes into the sentence. `at`: where the piece stands in the job.
 */
export function atPieceField(problem: Problem, document: PieceDocument, at = 'piece'): Problem {
  const path = pieceField(problem.path, document, problem.message, at);
  const unlisted = path === `${at}.edges` ? UNLISTED.exec(problem.path)?.[1] : undefined;
  const message =
    unlisted === undefined || problem.message.includes(`"${unlisted}"`)
      ? problem.message
      : `Edge "${unlisted}": ${problem.message.charAt(0).toLowerCase()}${problem.message.slice(1)}`;
  return { ...problem, path, message };
}

/** Names core/piece gives an edge hold no point. */
const UNLISTED = /^edges\.([^.]+)/;

/**
 * Field of the job document for a path of core/piece. `message` tells an edge, where there is one, and so which of the two
 * distances of a cut-out is at fault. A path nobody typed a field for leads to the section it belongs to.
 */
export function pieceField(path: string, document: PieceDocument, message = '', at = 'piece'): string {
  const [root = '', ...rest] = path.split('.');
  switch (root) {
    case 'bodyThickness':
      return `${at}.bodyThickness`;
    case 'outline':
      return `${at}.${outlineField(rest)}`;
    case 'edges':
      return `${at}.${edgeField(path.slice('edges.'.length), document)}`;
    case 'cutOuts':
      return `${at}.${cutOutField(rest, document, message)}`;
    default:
      return at;
  }
}

function outlineField(rest: readonly string[]): string {
  const [field, index, part] = rest;
  if (field === undefined || field === 'segments' || field === 'start') return 'outline';
  if (field !== 'corners' || index === undefined) return `outline.${field}`;
  return `outline.corners.${index}.${part === 'radius' ? 'radius' : 'x'}`;
}

/** An edge's name may hold spaces and points, so it is found by what the document holds. */
function edgeField(below: string, document: PieceDocument): string {
  let found = -1;
  document.edges.forEach(({ edge }, index) => {
    const fits = below === edge || below.startsWith(`${edge}.`);
    const longest = found < 0 || edge.length > document.edges[found]!.edge.length;
    if (fits && longest) found = index;
  });
  const edge = document.edges[found];
  if (edge === undefined) return 'edges';
  const at = `edges.${found}`;
  const [field = '', part] = below.slice(edge.edge.length + 1).split('.');
  switch (field) {
    case 'faceHeight':
    case 'undersideReturn':
      return `${at}.${field}`;
    case 'profile':
      return part !== undefined || edge.profile !== 'bullnose' ? `${at}.profileSize` : `${at}.profile`;
    default:
      return `${at}.edge`;
  }
}

/** Edges along the front and the back: a cut-out too near to one is moved by its distance from the front. */
const ACROSS = /edge "(?:front|back|return end)"/;

function cutOutField(rest: readonly string[], document: PieceDocument, message: string): string {
  const [index, field] = rest;
  const cutOut = index === undefined ? undefined : document.cutOuts[Number(index)];
  if (cutOut === undefined) return 'cutOuts';
  const at = `cutOuts.${index}`;
  switch (field) {
    case 'centre':
      return ACROSS.test(message) ? `${at}.fromFront` : `${at}.fromLeft`;
    case 'diameter':
      return `${at}.length`;
    case 'rotation':
      return `${at}.turned`;
    case 'length':
    case 'width':
    case 'cornerRadius':
      return `${at}.${field}`;
    case 'faceHeight':
    case 'profile':
      return `${at}.rim`;
    default:
      return at;
  }
}
