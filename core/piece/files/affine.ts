/** Moving, turning, scaling and shearing in the plane: (x, y) becomes (a x + c y + e, b x + d y + f). */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const UNMOVED: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`. */
export function after(outer: Affine, inner: Affine): Affine {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

export function place(m: Affine, p: Spot): Spot {
  return { x: m.a * p.x + m.c * p.y + m.e, y: m.b * p.x + m.d * p.y + m.f };
}

/** A direction: turned and stretched, not moved. */
export function turn(m: Affine, p: Spot): Spot {
  return { x: m.a * p.x + m.c * p.y, y: m.b * p.x + m.d * p.y };
}

export function shift(x: number, y: number): Affine {
  return { ...UNMOVED, e: x, f: y };
}

export function stretch(x: number, y: number): Affine {
  return { ...UNMOVED, a: x, d: y };
}

export function rotation(angle_rad: number): Affine {
  const cos = Math.cos(angle_rad);
  const sin = Math.sin(angle_rad);
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}
