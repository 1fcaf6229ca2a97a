/** A work-precision diagram as SVG: fixed layout, numbers rounded, so that the same runs give the same file. */
import { front, type Run } from './work-precision.ts';

export interface Series {
  readonly key: string;
  readonly name: string;
  readonly runs: readonly Run[];
}

export interface Panel {
  readonly title: string;
  readonly series: readonly Series[];
  /** Marked with a ring: the run at the default tolerance. */
  readonly marked: Run;
}

const PANEL = { width: 400, height: 330, left: 64, top: 62, gap: 76 } as const;
const LEGEND_WIDTH = 178;
/** Colours that stay apart for colour-blind eyes (Okabe and Ito), and a mark each so that colour is not needed. */
const STYLE: Record<string, { readonly colour: string; readonly mark: Mark }> = {
  ours: { colour: '#0072b2', mark: 'disc' },
  cvode: { colour: '#d55e00', mark: 'square' },
  'lsoda-tuned': { colour: '#009e73', mark: 'up' },
  'bdf-tuned': { colour: '#cc79a7', mark: 'down' },
  'lsoda-usual': { colour: '#7a6a00', mark: 'diamond' },
  'bdf-usual': { colour: '#444444', mark: 'cross' },
};
type Mark = 'disc' | 'square' | 'up' | 'down' | 'diamond' | 'cross';

const fixed = (value: number): string => Number(value.toFixed(1)).toString();

function markAt(mark: Mark, x: number, y: number, colour: string): string {
  const p = (dx: number, dy: number) => `${fixed(x + dx)} ${fixed(y + dy)}`;
  const shape = (points: readonly (readonly [number, number])[]) =>
    `<path d="M${points.map(([dx, dy]) => p(dx, dy)).join('L')}Z" fill="${colour}"/>`;
  switch (mark) {
    case 'disc':
      return `<circle cx="${fixed(x)}" cy="${fixed(y)}" r="3.6" fill="${colour}"/>`;
    case 'square':
      return shape([
        [-3.2, -3.2],
        [3.2, -3.2],
        [3.2, 3.2],
        [-3.2, 3.2],
      ]);
    case 'up':
      return shape([
        [-4, 3],
        [0, -4],
        [4, 3],
      ]);
    case 'down':
      return shape([
        [-4, -3],
        [0, 4],
        [4, -3],
      ]);
    case 'diamond':
      return shape([
        [-4, 0],
        [0, -4],
        [4, 0],
        [0, 4],
      ]);
    case 'cross':
      return `<path d="M${p(-3, -3)}L${p(3, 3)}M${p(-3, 3)}L${p(3, -3)}" stroke="${colour}" stroke-width="2"/>`;
  }
}

interface Axis {
  readonly low: number;
  readonly high: number;
}

/** Whole decades around the values. */
function decades(values: readonly number[]): Axis {
  const logs = values.filter((value) => value > 0).map(Math.log10);
  return { low: Math.floor(Math.min(...logs)), high: Math.ceil(Math.max(...logs)) };
}

const SUPERSCRIPT = '⁰¹²³⁴⁵⁶⁷⁸⁹';
function power(exponent: number): string {
  const digits = [...String(Math.abs(exponent))].map((digit) => SUPERSCRIPT[Number(digit)]).join('');
  return `10${exponent < 0 ? '⁻' : ''}${digits}`;
}

function drawPanel(panel: Panel, index: number, time: Axis): string {
  const left = PANEL.left + index * (PANEL.width + PANEL.gap);
  const { width, height, top } = PANEL;
  const error = decades(panel.series.flatMap(({ runs }) => runs.map((run) => run.error)));
  const x = (value: number) => left + (width * (error.high - Math.log10(value))) / (error.high - error.low);
  const y = (ms: number) => top + (height * (time.high - Math.log10(ms))) / (time.high - time.low);
  const parts: string[] = [`<text x="${left}" y="${top - 14}" class="title">${panel.title}</text>`];
  for (let e = error.low; e <= error.high; e++) {
    const at = fixed(x(10 ** e));
    parts.push(
      `<path d="M${at} ${top}V${top + height}" class="grid"/>`,
      `<text x="${at}" y="${top + height + 18}" text-anchor="middle">${power(e)}</text>`,
    );
  }
  for (let e = time.low; e <= time.high; e++) {
    const at = y(10 ** e);
    parts.push(
      `<path d="M${left} ${fixed(at)}H${left + width}" class="grid"/>`,
      `<text x="${left - 8}" y="${fixed(at + 4)}" text-anchor="end">${10 ** e}</text>`,
    );
  }
  parts.push(
    `<text x="${left + width / 2}" y="${top + height + 38}" text-anchor="middle">error, more exact to the right</text>`,
  );
  for (const { key, runs } of panel.series) {
    const { colour, mark } = STYLE[key]!;
    const shown = runs.filter((run) => run.error > 0);
    const line = front(shown)
      .map((run) => `${fixed(x(run.error))} ${fixed(y(1000 * run.cpu_s))}`)
      .join('L');
    parts.push(`<path d="M${line}" fill="none" stroke="${colour}" stroke-width="1.6"/>`);
    for (const run of shown) parts.push(markAt(mark, x(run.error), y(1000 * run.cpu_s), colour));
  }
  const { error: markedError, cpu_s } = panel.marked;
  parts.push(
    `<circle cx="${fixed(x(markedError))}" cy="${fixed(y(1000 * cpu_s))}" r="8" fill="none" stroke="${STYLE.ours!.colour}" stroke-width="1.5"/>`,
  );
  return parts.join('\n');
}

/** Two panels beside each other share the time axis (ms) and the legend. */
export function workPrecisionSvg(panels: readonly Panel[]): string {
  const time = decades(
    panels.flatMap(({ series }) => series.flatMap(({ runs }) => runs.map((run) => 1000 * run.cpu_s))),
  );
  const legendLeft = PANEL.left + panels.length * (PANEL.width + PANEL.gap) - PANEL.gap + 26;
  const width = legendLeft + LEGEND_WIDTH;
  const height = PANEL.top + PANEL.height + 56;
  const legend = (panels[0]?.series ?? []).map(({ key, name }, i) => {
    const at = PANEL.top + 12 + 24 * i;
    const { colour, mark } = STYLE[key]!;
    return `<path d="M${legendLeft} ${at}h22" stroke="${colour}" stroke-width="1.6"/>${markAt(mark, legendLeft + 11, at, colour)}
<text x="${legendLeft + 30}" y="${at + 4}">${name}</text>`;
  });
  const ringAt = PANEL.top + 20 + 24 * legend.length;
  legend.push(
    `<circle cx="${legendLeft + 11}" cy="${ringAt}" r="8" fill="none" stroke="${STYLE.ours!.colour}" stroke-width="1.5"/>
<text x="${legendLeft + 30}" y="${ringAt + 4}">default tolerance</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="CPU time of one forecast against its error, for each solver">
<style>text{font:13px sans-serif;fill:#222}.title{font-weight:600}.grid{stroke:#ddd;stroke-width:1}</style>
<rect width="${width}" height="${height}" fill="#fff"/>
<text x="12" y="24">CPU time of one forecast, ms</text>
${panels.map((panel, i) => drawPanel(panel, i, time)).join('\n')}
${legend.join('\n')}
</svg>
`;
}
