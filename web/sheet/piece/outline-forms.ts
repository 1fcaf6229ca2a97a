/** The outlines a form offers, their sizes in words, and what changing one for another keeps. Pure. */
import type { EdgeDocument, OutlineDocument, PieceDocument } from '#core/job/document.ts';

export interface SizeRow {
  readonly key: string;
  readonly label: string;
  readonly needed: boolean;
}

export const SHAPES: readonly { readonly value: OutlineDocument['shape']; readonly label: string }[] = [
  { value: 'rectangle', label: 'rectangle' },
  { value: 'ell', label: 'L counter' },
  { value: 'round', label: 'round' },
  { value: 'ellipse', label: 'ellipse' },
  { value: 'polygon', label: 'corner by corner' },
];

const row = (key: string, label: string, needed = true): SizeRow => ({ key, label, needed });

/** The sizes of a shape in the order a tape takes them. */
export function sizeRows(shape: OutlineDocument['shape']): readonly SizeRow[] {
  switch (shape) {
    case 'rectangle':
      return [
        row('length', 'Length along the front'),
        row('width', 'Depth, front to back'),
        row('cornerRadius', 'Corner radius', false),
      ];
    case 'ell':
      return [
        row('length', 'Main leg along the back'),
        row('width', 'Depth of the main leg'),
        row('returnLength', 'Return, from the back'),
        row('returnWidth', 'Depth of the return'),
        row('cornerRadius', 'Outer corner radius', false),
        row('insideRadius', 'Inner corner radius', false),
      ];
    case 'round':
      return [row('diameter', 'Diameter')];
    case 'ellipse':
      return [row('length', 'Long axis'), row('width', 'Short axis')];
    case 'polygon':
      return [];
  }
}

/** Names of the edges an outline has, in order; the same names core/piece gives them. */
export function edgeNamesOf(outline: OutlineDocument): readonly string[] {
  switch (outline.shape) {
    case 'rectangle':
      return ['front', 'right', 'back', 'left'];
    case 'ell':
      return outline.side === 'right'
        ? ['front', 'return front', 'return end', 'right', 'back', 'left']
        : ['left', 'return end', 'return front', 'front', 'right', 'back'];
    case 'round':
    case 'ellipse':
      return ['rim'];
    case 'polygon':
      return outline.corners.map((_, i) => `edge ${i + 1}`);
  }
}

/** An edge nobody has described: finished, as high as the body, eased. */
export function plainEdge(name: string): EdgeDocument {
  return {
    edge: name,
    kind: 'finished',
    faceHeight: '',
    profile: 'square eased',
    profileSize: '',
    undersideReturn: '',
  };
}

/** The piece with another outline: sizes with the same name stay, edges with the same name stay, the rest is new. */
export function withShape(piece: PieceDocument, shape: OutlineDocument['shape']): PieceDocument {
  const old = piece.outline;
  const was = (key: string): string => {
    const value = old === null ? undefined : (old as unknown as Record<string, unknown>)[key];
    return typeof value === 'string' ? value : '';
  };
  const outline = ((): OutlineDocument => {
    switch (shape) {
      case 'rectangle':
        return {
          shape,
          length: was('length') || was('diameter'),
          width: was('width') || was('diameter'),
          cornerRadius: was('cornerRadius'),
        };
      case 'ell':
        return {
          shape,
          side: 'right',
          length: was('length'),
          width: was('width'),
          returnLength: was('returnLength'),
          returnWidth: was('returnWidth') || was('width'),
          cornerRadius: was('cornerRadius'),
          insideRadius: was('insideRadius'),
        };
      case 'round':
        return { shape, diameter: was('diameter') || was('length') };
      case 'ellipse':
        return { shape, length: was('length') || was('diameter'), width: was('width') || was('diameter') };
      case 'polygon': {
        const [length, width] = [was('length'), was('width')];
        const corner = (x: string, y: string) => ({ x, y, radius: '', bow: '' });
        return {
          shape,
          corners: [
            corner('0 in', '0 in'),
            corner(length, '0 in'),
            corner(length, width),
            corner('0 in', width),
          ],
        };
      }
    }
  })();
  return withEdges({ ...piece, outline });
}

/** One row for each edge of the outline; rows that were filled in and no longer fit are kept at the end, to be seen and removed. */
export function withEdges(piece: PieceDocument): PieceDocument {
  if (piece.outline === null) return piece;
  const names = edgeNamesOf(piece.outline);
  const find = (name: string) => piece.edges.find((edge) => edge.edge === name);
  const left = piece.edges.filter((edge) => !names.includes(edge.edge) && touched(edge));
  return { ...piece, edges: [...names.map((name) => find(name) ?? plainEdge(name)), ...left] };
}

function touched(edge: EdgeDocument): boolean {
  return (
    edge.kind !== 'finished' ||
    edge.faceHeight !== '' ||
    edge.profileSize !== '' ||
    edge.undersideReturn !== ''
  );
}
