/** Column numbers that stand right-aligned. */
export function rightAligned(...columns: readonly number[]): ReadonlySet<number> {
  return new Set(columns);
}

/** Plain-text columns as wide as what stands in them, two spaces apart; the last column is not padded. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: ReadonlySet<number>,
): string[] {
  const widths = head.map((title, column) =>
    Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const line = (cells: readonly string[]) =>
    `  ${cells
      .map((cell, column) => {
        const width = widths[column]!;
        if (right.has(column)) return cell.padStart(width);
        return column === cells.length - 1 ? cell : cell.padEnd(width);
      })
      .join('  ')}`.trimEnd();
  return [
    line(head),
    line(widths.slice(0, head.length).map((width) => '-'.repeat(width))),
    ...rows.map(line),
  ];
}

/** Breaks a text at spaces so that no line is longer than `width`; a word longer than that stands alone. */
export function wrap(text: string, width: number, first = '', next = first.replace(/\S/g, ' ')): string[] {
  const lines: string[] = [];
  let line = first;
  let bare = true;
  for (const word of text.split(/\s+/).filter((each) => each !== '')) {
    if (!bare && line.length + 1 + word.length > width) {
      lines.push(line);
      line = next;
      bare = true;
    }
    line += bare ? word : ` ${word}`;
    bare = false;
  }
  return [...lines, line];
}
