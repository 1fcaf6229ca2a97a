/**
 * The maps of core/look/moves in the language of graphics cards, single precision. Figures come in the order those files name
 * them; web/e2e/look-gl.e2e.ts holds both renderings against each other.
 */
import { FIGURES, KIND } from '#core/look/moves/specks.ts';
import { SHEARS, WAVE } from '#core/look/moves/waver-carry.ts';

/** Moves side by side in a row of the texture: rows of a texture may be fewer than moves. */
export const MOVES_A_ROW = 128;
export const TEXELS = FIGURES / 4;

export const MAPS = `
uniform sampler2D moves;
uniform sampler2D waves;
uniform int count;
uniform int ground;

vec4 figure(int move, int texel) {
  return texelFetch(moves, ivec2((move % ${MOVES_A_ROW}) * ${TEXELS} + texel, move / ${MOVES_A_ROW}), 0);
}

float dragShare(float d, float film) {
  return d <= 0.0 ? 1.0 : 1.2732395447351628 * atan(exp(-1.5707963267948966 * d / film));
}

vec2 dragBack(vec2 p, vec4 a, vec4 b, vec4 c) {
  vec2 m = vec2(a.w, b.x);
  float half_m = b.z, film = b.w, last = c.x, pitch = c.y;
  float off = dot(p - a.yz, vec2(-m.y, m.x));
  float tooth = clamp(floor(off / pitch + last / 2.0 + 0.5), 0.0, last);
  float beside = abs(off - (tooth - last / 2.0) * pitch);
  if (beside > half_m + 8.0 * film) return p;
  return p - b.y * dragShare(beside - half_m, film) * m;
}

vec2 strokeBack(vec2 p, vec4 a, vec4 b, vec4 c) {
  vec2 m = vec2(a.w, b.x);
  float len = b.y / b.z, reach = b.z, go = c.x;
  int steps = int(b.w);
  if (steps == 0) return p;
  vec2 r = (p - a.yz) / reach;
  float along = dot(r, m), v = dot(r, vec2(-m.y, m.x));
  if (abs(v) >= 1.0 || along <= -1.0 || along >= len + 1.0) return p;
  float step_ = len / float(steps);
  for (int k = min(steps - 1, int(floor((along + 1.0) / step_ + 0.5))); k >= 0; k--) {
    float tool = (float(k) + 0.5) * step_;
    float u0 = along - tool;
    if (u0 >= 1.0) break;
    if (u0 <= -1.0) continue;
    float w = 1.0 - v * v;
    float push = go * w * (1.0 - 5.0 * v * v);
    float u = u0;
    // Two rounds are to the rounding of single precision.
    for (int i = 0; i < 2; i++) {
      float q = max(0.0, 1.0 - u * u);
      u -= (u - u0 + push * q * q * q) / (1.0 - 6.0 * push * u * q * q);
    }
    float q = max(0.0, 1.0 - u * u);
    v -= go * 6.0 * u * q * q * v * w * w;
    along = u + tool;
  }
  along *= reach;
  v *= reach;
  return a.yz + along * m + v * vec2(-m.y, m.x);
}

vec2 swirlBack(vec2 p, vec4 a, vec4 b) {
  vec2 r = p - a.yz;
  float turn = a.w * exp(-length(r) / b.x);
  float c = cos(turn), s = sin(turn);
  return a.yz + vec2(c * r.x + s * r.y, c * r.y - s * r.x);
}

vec2 tiltBack(vec2 p, vec4 a, vec4 b) {
  vec2 r = p - a.yz, m = vec2(a.w, b.x);
  float along = dot(r, m) / b.y, across = dot(r, vec2(-m.y, m.x)) * b.y;
  return a.yz + along * m + across * vec2(-m.y, m.x);
}

vec2 shearBack(vec2 p, vec4 a, vec2 m, int row) {
  float at = dot(p, vec2(-m.y, m.x)) / a.z;
  float low = floor(at), t = at - low;
  int i = int(low);
  float from = texelFetch(waves, ivec2(i & ${WAVE - 1}, row), 0).r;
  float to = texelFetch(waves, ivec2((i + 1) & ${WAVE - 1}, row), 0).r;
  return p - a.y * (from + (to - from) * t * t * t * (t * (6.0 * t - 15.0) + 10.0)) * m;
}

vec2 waverBack(vec2 p, vec4 a, vec4 b, vec4 c) {
  int row = int(a.w) * ${SHEARS};
  p = shearBack(p, a, c.zw, row + 3);
  p = shearBack(p, a, c.xy, row + 2);
  p = shearBack(p, a, b.zw, row + 1);
  return shearBack(p, a, b.xy, row);
}

/** The colour poured where the film now at p came from. */
int colourAt(vec2 p) {
  for (int move = count - 1; move >= 0; move--) {
    vec4 a = figure(move, 0);
    int kind = int(a.x);
    if (kind == ${KIND.puddle}) {
      vec2 r = p - a.yz;
      float d2 = dot(r, r);
      if (d2 <= a.w) return int(figure(move, 1).x);
      p = a.yz + r * sqrt(1.0 - a.w / d2);
    } else {
      vec4 b = figure(move, 1);
      if (kind == ${KIND.drag}) p = dragBack(p, a, b, figure(move, 2));
      else if (kind == ${KIND.stroke}) p = strokeBack(p, a, b, figure(move, 2));
      else if (kind == ${KIND.swirl}) p = swirlBack(p, a, b);
      else if (kind == ${KIND.waver}) p = waverBack(p, a, b, figure(move, 2));
      else p = tiltBack(p, a, b);
    }
  }
  return ground;
}
`;
