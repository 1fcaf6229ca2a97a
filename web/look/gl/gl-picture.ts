/** Renders scenes on the graphics card. Nothing is loaded at run time: the program is text in this app. */
import { FIGURES } from '#core/look/moves/specks.ts';
import { WAVE } from '#core/look/moves/waver-carry.ts';
import { CELL_FIGURES, COLOUR_FIGURES, PANEL_FIGURES, type Scene } from '#core/look/render/scene.ts';
import { MOVES_A_ROW, TEXELS } from './maps-glsl.ts';
import { FRAGMENT, VERTEX } from './picture-glsl.ts';

export interface GlPicture {
  /** Takes over another scene; its size becomes that of the canvas. */
  readonly show: (scene: Scene) => void;
  /** Renders the scene shown last: at one place a pixel while a hand moves something, else in full. */
  readonly draw: (full: boolean) => void;
  readonly dispose: () => void;
}

export interface GlWishes {
  /** Also take a card that is worked out by the processor (for tests); it is slower than our own workers. */
  readonly software?: boolean;
}

const TEXTURES = ['moves', 'waves', 'colours', 'panels', 'cells', 'mask', 'fog'] as const;
type Name = (typeof TEXTURES)[number];

/** null where there is no WebGL2, or none that is faster than the processor, or the program does not run on it. */
export function glPicture(
  canvas: HTMLCanvasElement | OffscreenCanvas,
  wishes: GlWishes = {},
): GlPicture | null {
  const gl = canvas.getContext('webgl2', {
    alpha: true,
    antialias: false,
    depth: false,
    stencil: false,
    premultipliedAlpha: false,
    // Printing reads the canvas long after it was drawn.
    preserveDrawingBuffer: true,
    failIfMajorPerformanceCaveat: wishes.software !== true,
  }) as WebGL2RenderingContext | null;
  if (gl === null || (wishes.software !== true && isSoftware(gl))) return null;
  const program = programOf(gl);
  if (program === null) return null;
  const at = (name: string) => gl.getUniformLocation(program, name);
  const textures = new Map<Name, WebGLTexture>();
  TEXTURES.forEach((name, unit) => {
    const texture = gl.createTexture();
    gl.activeTexture(gl.TEXTURE0 + unit);
    gl.bindTexture(gl.TEXTURE_2D, texture);
    for (const side of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER])
      gl.texParameteri(gl.TEXTURE_2D, side, gl.NEAREST);
    for (const side of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T])
      gl.texParameteri(gl.TEXTURE_2D, side, gl.CLAMP_TO_EDGE);
    textures.set(name, texture);
  });
  // biome-ignore lint/correctness/useHookAtTopLevel: the name is WebGL's, not React's.
  gl.useProgram(program);
  TEXTURES.forEach((name, unit) => {
    gl.uniform1i(at(name), unit);
  });
  const spots = Object.fromEntries(
    ['count', 'ground', 'foggy', 'corner', 'rows', 'seed', 'streak', 'full'].map((name) => [name, at(name)]),
  );
  gl.bindVertexArray(gl.createVertexArray());
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);

  const select = (name: Name): void => gl.activeTexture(gl.TEXTURE0 + TEXTURES.indexOf(name));
  const floats = (name: Name, wide: number, high: number, data: Float32Array): void => {
    select(name);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, wide, high, 0, gl.RGBA, gl.FLOAT, data);
  };
  /** Rows of figures, each filled up to whole texels. */
  const table = (name: Name, figures: ArrayLike<number>, each: number): void => {
    const texels = Math.ceil(each / 4);
    const high = Math.max(1, figures.length / each);
    const data = new Float32Array(4 * texels * high);
    for (let i = 0; i < figures.length; i++)
      data[Math.floor(i / each) * 4 * texels + (i % each)] = figures[i]!;
    floats(name, texels, high, data);
  };

  // What stays the same from one turn of the hand to the next is not sent again.
  let sent: Scene | null = null;
  return {
    show(scene) {
      const { window } = scene;
      if (canvas.width !== window.columns || canvas.height !== window.rows) {
        canvas.width = window.columns;
        canvas.height = window.rows;
      }
      gl.viewport(0, 0, window.columns, window.rows);
      const moves = scene.figures.length / FIGURES;
      const high = Math.max(1, Math.ceil(moves / MOVES_A_ROW));
      const figures = new Float32Array(4 * TEXELS * MOVES_A_ROW * high);
      figures.set(scene.figures);
      floats('moves', TEXELS * MOVES_A_ROW, high, figures);
      select('waves');
      const waves = Math.max(1, scene.waves.length / WAVE);
      const values = new Float32Array(WAVE * waves);
      values.set(scene.waves);
      gl.texImage2D(gl.TEXTURE_2D, 0, gl.R32F, WAVE, waves, 0, gl.RED, gl.FLOAT, values);
      table('colours', scene.colours, COLOUR_FIGURES);
      table('panels', scene.panels, PANEL_FIGURES);
      cellTable(scene.cells, (data, count) => floats('cells', 2, count, data));
      if (sent?.cover !== scene.cover) {
        select('mask');
        const mask = new Uint8Array(2 * scene.cover.length);
        for (let i = 0; i < scene.cover.length; i++) {
          mask[2 * i] = scene.cover[i]!;
          mask[2 * i + 1] = scene.panelOf[i]!;
        }
        const [wide, tall] = [window.columns, window.rows];
        gl.texImage2D(gl.TEXTURE_2D, 0, gl.RG8UI, wide, tall, 0, gl.RG_INTEGER, gl.UNSIGNED_BYTE, mask);
      }
      if (scene.fog !== null && sent?.fog !== scene.fog)
        floats('fog', window.columns, window.rows, scene.fog);
      if (scene.fog === null && sent?.fog !== null) floats('fog', 1, 1, new Float32Array(4));
      gl.uniform1i(spots.count!, moves);
      gl.uniform1i(spots.ground!, scene.ground);
      gl.uniform1i(spots.foggy!, scene.fog === null ? 0 : 1);
      gl.uniform2i(spots.corner!, window.column, window.row);
      gl.uniform1i(spots.rows!, window.rows);
      gl.uniform1i(spots.seed!, scene.seed);
      const { light, left, front, wide } = scene.streak;
      gl.uniform4f(spots.streak!, light, left, front, wide);
      sent = scene;
    },
    draw(full) {
      if (sent === null) return;
      gl.uniform1i(spots.full!, full ? 1 : 0);
      gl.drawArrays(gl.TRIANGLES, 0, 3);
    },
    dispose() {
      for (const texture of textures.values()) gl.deleteTexture(texture);
      gl.deleteProgram(program);
      gl.getExtension('WEBGL_lose_context')?.loseContext();
    },
  };
}

/** Both rows of a cell in a texel of their own, the fourth figure of each idle. */
function cellTable(cells: Float64Array, put: (data: Float32Array, count: number) => void): void {
  const count = cells.length / CELL_FIGURES;
  const data = new Float32Array(8 * count);
  for (let cell = 0; cell < count; cell++)
    for (let i = 0; i < CELL_FIGURES; i++)
      data[8 * cell + (i < 3 ? i : i + 1)] = cells[cell * CELL_FIGURES + i]!;
  put(data, count);
}

/** Browsers do not always own up to a card that is the processor in disguise; its name does. */
function isSoftware(gl: WebGL2RenderingContext): boolean {
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const name = String(gl.getParameter(info === null ? gl.RENDERER : info.UNMASKED_RENDERER_WEBGL));
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

function programOf(gl: WebGL2RenderingContext): WebGLProgram | null {
  const program = gl.createProgram();
  for (const [kind, text] of [
    [gl.VERTEX_SHADER, VERTEX],
    [gl.FRAGMENT_SHADER, FRAGMENT],
  ] as const) {
    const shader = gl.createShader(kind);
    if (shader === null) return null;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
    gl.deleteShader(shader);
  }
  gl.linkProgram(program);
  if (gl.getProgramParameter(program, gl.LINK_STATUS) !== true) {
    const logs = gl.getAttachedShaders(program)?.map((shader) => gl.getShaderInfoLog(shader)) ?? [];
    if (!gl.isContextLost()) console.warn('look: the picture is drawn without the graphics card', ...logs);
    return null;
  }
  return program;
}
