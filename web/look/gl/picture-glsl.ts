/** core/look/render/render.ts in the language of graphics cards: one pixel of a scene. */

import { HALF_WIDTH, LEAN, MIDDLE } from '#core/look/render/gloss.ts';
import { RARE } from '#core/look/render/sparkle.ts';
import { MAPS } from './maps-glsl.ts';

export const VERTEX = `#version 300 es
void main() {
  // One triangle over the whole picture.
  gl_Position = vec4(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0, 0.0, 1.0);
}`;

const float = (value: number): string => (Number.isInteger(value) ? `${value}.0` : String(value));

export const FRAGMENT = `#version 300 es
precision highp float;
precision highp int;
precision highp sampler2D;
precision highp usampler2D;
${MAPS}
uniform sampler2D colours;
uniform sampler2D panels;
uniform sampler2D cells;
uniform usampler2D mask;
uniform sampler2D fog;
uniform bool foggy;
uniform ivec2 corner;
uniform int rows;
uniform int seed;
uniform vec4 streak;
/** False while the hand moves: one place a pixel. */
uniform bool full;
out vec4 result;

int cellAt(int panel, vec2 middle) {
  vec4 a = texelFetch(panels, ivec2(0, panel), 0);
  vec4 b = texelFetch(panels, ivec2(1, panel), 0);
  if (b.z <= 1.0) return int(b.y);
  float u = a.x + a.y * middle.x + a.z * middle.y;
  return int(b.y) + int(clamp(floor((u - a.w) / b.x), 0.0, b.z - 1.0));
}

vec2 place(vec4 x, vec4 y, vec2 pixel) {
  return vec2(x.x + x.y * pixel.x + x.z * pixel.y, y.x + y.y * pixel.x + y.z * pixel.y);
}

float sparkle(ivec2 spot, float strength) {
  uint h = (uint(spot.x) * 0x27d4eb2du) ^ (uint(spot.y) * 0x165667b1u) ^ uint(seed);
  h = (h ^ (h >> 15)) * 0x2c1b3c6du;
  h = (h ^ (h >> 12)) * 0x297a2d39u;
  h ^= h >> 15;
  float draw = float(h >> 8) / 16777216.0;
  float d2 = draw * draw, d4 = d2 * d2;
  return 1.0 + strength * (${float(RARE + 1)} * d4 * d4 * d4 * d2 * draw - 1.0);
}

vec3 shine(int id, vec2 at) {
  vec4 a = texelFetch(colours, ivec2(0, id), 0);
  if (a.w == 0.0) return a.rgb;
  vec4 b = texelFetch(colours, ivec2(1, id), 0);
  float strength = texelFetch(colours, ivec2(2, id), 0).x;
  return (1.0 - a.w) * a.rgb + a.w * sparkle(ivec2(floor(at / b.w)), strength) * b.rgb;
}

float encoded(float light) {
  light = clamp(light, 0.0, 1.0);
  return light <= 0.0031308 ? 12.92 * light : 1.055 * pow(light, 1.0 / 2.4) - 0.055;
}

void main() {
  ivec2 inWindow = ivec2(int(gl_FragCoord.x), rows - 1 - int(gl_FragCoord.y));
  uvec2 covered = texelFetch(mask, inWindow, 0).rg;
  result = vec4(0.0);
  if (covered.x == 0u) return;
  vec2 pixel = vec2(corner + inWindow);
  int cell = cellAt(int(covered.y), pixel + 0.5);
  vec4 x = texelFetch(cells, ivec2(0, cell), 0), y = texelFetch(cells, ivec2(1, cell), 0);
  // Tops and faces have colours of their own.
  int first = int(texelFetch(panels, ivec2(1, int(covered.y)), 0).w) * (textureSize(colours, 0).y / 2);
  vec3 light = vec3(0.0);
  if (full) {
    vec2 p[4];
    int ids[4];
    bool alike = true;
    for (int k = 0; k < 4; k++) {
      p[k] = place(x, y, pixel + vec2(float(k & 1) * 0.5 + 0.25, float(k >> 1) * 0.5 + 0.25));
      ids[k] = colourAt(p[k]);
      alike = alike && ids[k] == ids[0];
    }
    if (alike) {
      for (int k = 0; k < 4; k++) light += shine(first + ids[k], p[k]) * 0.25;
    } else {
      for (int k = 0; k < 16; k++) {
        vec2 at = place(x, y, pixel + vec2(float(k & 3) * 0.25 + 0.125, float(k >> 2) * 0.25 + 0.125));
        light += shine(first + colourAt(at), at) * 0.0625;
      }
    }
  } else {
    vec2 at = place(x, y, pixel + 0.5);
    light = shine(first + colourAt(at), at);
  }
  if (foggy) {
    vec4 veil = texelFetch(fog, inWindow, 0);
    light = light * veil.a + veil.rgb;
  }
  if (streak.x > 0.0) {
    float across = (pixel.x + 0.5 - streak.y) / streak.w, up = (streak.z - pixel.y - 0.5) / streak.w;
    float off = abs(across - ${float(LEAN)} * up - ${float(MIDDLE)}) / ${float(HALF_WIDTH)};
    float q = max(0.0, 1.0 - off * off);
    light += streak.x * q * q;
  }
  result = vec4(encoded(light.r), encoded(light.g), encoded(light.b), float(covered.x) / 16.0);
}`;
