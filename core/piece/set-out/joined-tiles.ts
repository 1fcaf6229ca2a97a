/** Which sheets to print so that they hold together: those with a line, and the fewest blank ones that join islands. */

interface Cell {
  readonly row: number;
  readonly column: number;
}

/**
 * Adds to the sheets that are used the shortest run of blank ones to each group that would lie loose (the rim of a bowl in
 * the middle of a wide top). Sheets join along their sides. `used` holds one row of the grid after another.
 */
export function joinedTiles(used: readonly (readonly boolean[])[]): boolean[][] {
  const kept = used.map((cells) => [...cells]);
  const first = find(kept, () => true);
  if (first === undefined) return kept;
  for (;;) {
    const group = grow(kept, first);
    const loose = find(kept, (cell) => !group.has(key(cell)));
    if (loose === undefined) return kept;
    for (const cell of shortestWay(kept, group)) kept[cell.row]![cell.column] = true;
  }
}

function key({ row, column }: Cell): string {
  return `${row} ${column}`;
}

function find(kept: readonly (readonly boolean[])[], fits: (cell: Cell) => boolean): Cell | undefined {
  for (let row = 0; row < kept.length; row += 1)
    for (let column = 0; column < kept[row]!.length; column += 1)
      if (kept[row]![column] && fits({ row, column })) return { row, column };
  return undefined;
}

function neighbours(kept: readonly (readonly boolean[])[], { row, column }: Cell): Cell[] {
  return [
    { row: row - 1, column },
    { row, column: column - 1 },
    { row, column: column + 1 },
    { row: row + 1, column },
  ].filter((c) => kept[c.row]?.[c.column] !== undefined);
}

/** All kept sheets that hang together with this one. */
function grow(kept: readonly (readonly boolean[])[], from: Cell): Set<string> {
  const group = new Set([key(from)]);
  const open = [from];
  for (let cell = open.pop(); cell !== undefined; cell = open.pop())
    for (const next of neighbours(kept, cell)) {
      if (!kept[next.row]![next.column] || group.has(key(next))) continue;
      group.add(key(next));
      open.push(next);
    }
  return group;
}

/** Blank sheets between the group and the nearest kept sheet outside it (breadth first). */
function shortestWay(kept: readonly (readonly boolean[])[], group: ReadonlySet<string>): Cell[] {
  const cameFrom = new Map<string, Cell | null>();
  let ring: Cell[] = [];
  for (const name of group) {
    const [row, column] = name.split(' ').map(Number) as [number, number];
    cameFrom.set(name, null);
    ring.push({ row, column });
  }
  while (ring.length > 0) {
    const outer: Cell[] = [];
    for (const cell of ring)
      for (const next of neighbours(kept, cell)) {
        if (cameFrom.has(key(next))) continue;
        cameFrom.set(key(next), cell);
        if (kept[next.row]![next.column]) {
          const way: Cell[] = [];
          for (let c: Cell | null = cell; c !== null && !group.has(key(c)); c = cameFrom.get(key(c)) ?? null)
            way.push(c);
          return way;
        }
        outer.push(next);
      }
    ring = outer;
  }
  return [];
}
