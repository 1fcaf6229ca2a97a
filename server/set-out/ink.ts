/** A PDF to draw on, in points (1/72 in) from the upper left corner, with text that may hold any script of the typeface. */
import PDFDocument from 'pdfkit';
import { type Orientation, type Paper, pageSize } from '#core/piece/set-out/paper.ts';
import { fontBytes, scriptRuns, type Weight } from './fonts.ts';

export const POINTS_PER_M = 72 / 0.0254;
export const BLACK = '#000000';
/** Helping lines and marks: dark enough for any printer, and not the black of the outline. */
export const GREY = '#5f5f5f';
export const PALE = '#c9c9c9';

export interface TextStyle {
  readonly size: number;
  readonly weight?: Weight;
  readonly colour?: string;
  readonly align?: 'left' | 'middle' | 'right';
  /** Degrees, clockwise on the page, about the point given. */
  readonly turn_deg?: number;
}

export interface Ink {
  readonly doc: PDFKit.PDFDocument;
  /** Of the page, points. */
  readonly width: number;
  readonly height: number;
  /** Puts a line of text with its base line at `y`. */
  write(text: string, x: number, y: number, style: TextStyle): void;
  /** Width of a line of text, points. */
  measure(text: string, style: TextStyle): number;
  /** Lines no wider than `width`; words that are too long are broken. */
  wrap(text: string, width: number, style: TextStyle): string[];
  page(): void;
  /** Every page, 0 first, for heads that say how many there are. */
  eachPage(draw: (index: number, count: number) => void): void;
  end(): Promise<Uint8Array<ArrayBuffer>>;
}

export interface PaperWishes {
  readonly paper: Paper;
  readonly orientation: Orientation;
  readonly title: string;
  readonly subject: string;
  /** ISO 8601, in the file's own notes; the same input gives the same bytes. */
  readonly at: string;
}

/** Opens a document with its first page. Viewers are asked to print it unscaled. */
export function openInk(wishes: PaperWishes): Ink {
  const size = pageSize(wishes.paper, wishes.orientation);
  const [width, height] = [size.width_m * POINTS_PER_M, size.height_m * POINTS_PER_M];
  const doc = new PDFDocument({
    size: [width, height],
    margin: 0,
    bufferPages: true,
    // None: a first font equal to a registered one would keep pdfkit from knowing the latter again, and read it for every word.
    font: null as unknown as string,
    displayTitle: true,
    lang: 'en',
    info: {
      Title: wishes.title.toWellFormed().slice(0, 200),
      Subject: wishes.subject,
      Creator: 'Pourwright',
      Producer: 'Pourwright',
      CreationDate: new Date(wishes.at),
    },
  });
  // Made by displayTitle; pdfkit has no option for the other entry.
  const root = (
    doc as unknown as { _root: { data: { ViewerPreferences: { data: Record<string, unknown> } } } }
  )._root;
  root.data.ViewerPreferences.data.PrintScaling = 'None';
  const chunks: Uint8Array[] = [];
  const ended = new Promise<Uint8Array<ArrayBuffer>>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
  const known = new Set<string>();
  const font = (script: Parameters<typeof fontBytes>[0], weight: Weight): string => {
    const name = `${script} ${weight}`;
    if (!known.has(name)) doc.registerFont(name, fontBytes(script, weight));
    known.add(name);
    return name;
  };
  // frac sets 1⁄16 as one fraction, tnum gives figures of one width.
  const features = ['frac', 'tnum'] as unknown as PDFKit.Mixins.OpenTypeFeatures[];

  const widths = new Map<string, number>();
  const measure = (text: string, style: TextStyle): number => {
    const key = `${style.size} ${style.weight ?? 400} ${text}`;
    const known = widths.get(key);
    if (known !== undefined) return known;
    let sum = 0;
    for (const run of scriptRuns(text)) {
      doc.font(font(run.script, style.weight ?? 400)).fontSize(style.size);
      sum += doc.widthOfString(run.text, { features });
    }
    widths.set(key, sum);
    return sum;
  };
  const write = (text: string, x: number, y: number, style: TextStyle): void => {
    if (text === '') return;
    const { size, weight = 400, colour = BLACK, align = 'left', turn_deg = 0 } = style;
    doc.save();
    if (turn_deg !== 0) doc.rotate(turn_deg, { origin: [x, y] });
    doc.fillColor(colour);
    let at = align === 'left' ? x : x - measure(text, style) / (align === 'middle' ? 2 : 1);
    for (const run of scriptRuns(text)) {
      doc.font(font(run.script, weight)).fontSize(size);
      doc.text(run.text, at, y, { lineBreak: false, features, baseline: 'alphabetic' });
      at += doc.widthOfString(run.text, { features });
    }
    doc.restore();
  };
  const wrap = (text: string, room: number, style: TextStyle): string[] => {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(/\s+/)) {
      let rest = word;
      const joined = line === '' ? rest : `${line} ${rest}`;
      if (measure(joined, style) <= room) {
        line = joined;
        continue;
      }
      if (line !== '') lines.push(line);
      while (measure(rest, style) > room && [...rest].length > 1) {
        const letters = [...rest];
        let take = letters.length - 1;
        while (take > 1 && measure(letters.slice(0, take).join(''), style) > room) take -= 1;
        lines.push(letters.slice(0, take).join(''));
        rest = letters.slice(take).join('');
      }
      line = rest;
    }
    if (line !== '' || lines.length === 0) lines.push(line);
    return lines;
  };
  return {
    doc,
    width,
    height,
    write,
    measure,
    wrap,
    page: () => void doc.addPage(),
    eachPage: (draw) => {
      const { start, count } = doc.bufferedPageRange();
      for (let i = 0; i < count; i += 1) {
        doc.switchToPage(start + i);
        draw(i, count);
      }
    },
    end: () => {
      doc.end();
      return ended;
    },
  };
}
