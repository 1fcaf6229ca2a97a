/** Widest line of a table, in characters: what a terminal and a printed page hold. */
export const TABLE_WIDTH = 110;
/** Columns are not made narrower than this. */
const NARROWEST = 10;
const MARGIN = 2;
const GAP = 2;

/** How the columns of a table stand, by their numbers. */
export interface Columns {
  /** Right-aligned, for figures; never broken. */
  readonly right?: readonly number[];
  /** Never broken either. */
  readonly whole?: readonly number[];
}

/**
 * Plain-text columns two spaces apart. Where they would be wider than `width`, the widest text columns are made narrower and their
 * cells go on in further lines.
 */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  columns: Columns = {},
  width = TABLE_WIDTH,
): string[] {
  const right = new Set(columns.right);
  const whole = new Set([...right, ...(columns.whole ?? [])]);
  const widths = head.map((title, column) =>
    Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const room = width - MARGIN - GAP * (head.length - 1);
  for (;;) {
    if (widths.reduce((sum, each) => sum + each, 0) <= room) break;
    let widest = -1;
    widths.forEach((each, column) => {
      if (whole.has(column) || each <= NARROWEST) return;
      if (widest < 0 || each >= widths[widest]!) widest = column;
    });
    if (widest < 0) break;
    widths[widest]! -= 1;
  }
  const lines = (cells: readonly string[]): string[] => {
    const wrapped = widths.map((each, column) =>
      whole.has(column) ? [cells[column] ?? ''] : wrap(cells[column] ?? '', each),
    );
    const height = Math.max(...wrapped.map((each) => each.length));
    return Array.from({ length: height }, (_, at) =>
      `${' '.repeat(MARGIN)}${wrapped
        .map((each, column) => {
          const text = each[at] ?? '';
          return right.has(column) ? text.padStart(widths[column]!) : text.padEnd(widths[column]!);
        })
        .join(' '.repeat(GAP))}`.trimEnd(),
    );
  };
  return [...lines(head), ...lines(widths.map((each) => '-'.repeat(each))), ...rows.flatMap(lines)];
}

/** A figure stays on a line with its unit and its fraction. */
const TIED =
  /(?<=\d) (?=\d+\/\d|(?:h|min|s|d|in|ft|fl|sq|lb|g|kg|mm|mL|L|m²|°)(?![a-z]))|(?<=\bfl|\bsq) |(?<=\d (?:h|d)) (?=\d)/g;
const TIE = '\u00a0';

/** Breaks a text at spaces so that no line is longer than `width`; a word longer than a line is broken where the line ends. */
export function wrap(text: string, width: number, first = '', next = first.replace(/\S/g, ' ')): string[] {
  const lines: string[] = [];
  let line = first;
  let bare = true;
  const turn = () => {
    lines.push(line);
    line = next;
    bare = true;
  };
  for (const word of text.replace(TIED, TIE).split(/[ \n\t\r]+/)) {
    if (word === '') continue;
    if (!bare && line.length + 1 + word.length > width) turn();
    let rest = word;
    while (bare && line.length + rest.length > width && width > next.length) {
      const fits = Math.max(1, width - line.length);
      line += rest.slice(0, fits);
      rest = rest.slice(fits);
      turn();
    }
    if (rest === '') continue;
    line += bare ? rest : ` ${rest}`;
    bare = false;
  }
  const all = bare && lines.length > 0 ? lines : [...lines, line];
  return all.map((each) => each.replaceAll(TIE, ' '));
}
