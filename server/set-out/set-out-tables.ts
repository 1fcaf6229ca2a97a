/** The tables of a set-out sheet. */
import type { Coordinates } from '#core/piece/set-out/datum.ts';
import type { SetOut } from '#core/piece/set-out/set-out.ts';
import type { SplashStrip } from '#core/piece/splash-strips.ts';
import type { System } from '#core/quantity/units.ts';
import { lengthCell, sayAngle, sayDatum, sayLength, sayMillimetres, sayProfile } from './say.ts';
import { type Cell, type Column, type Flow, heading, paragraph, table } from './table.ts';

export function writeTables(
  flow: Flow,
  sheet: SetOut,
  system: System,
  splashes: readonly SplashStrip[] = [],
): void {
  const { across, up } = sheet.datums;
  const cell = (value_m: number): Cell => lengthCell(value_m, system);
  const number = (head: string, share = 1.1): Column => ({ head, share, align: 'right' });
  const fromAcross = `from ${across.side}`;
  const fromUp = `from ${up.side}`;
  const point = (c: Coordinates | undefined): Cell[] =>
    c === undefined ? ['', ''] : [cell(c.across_m), cell(c.up_m)];

  heading(flow, 'Overall');
  paragraph(
    flow,
    `Length ${both(sheet.overall.length_m, system)}; depth ${both(sheet.overall.width_m, system)}; once round ` +
      `${both(sheet.perimeter_m, system)}; body ${both(sheet.bodyThickness_m, system)} thick. All distances are measured ` +
      `square from ${sayDatum(across)} and from ${sayDatum(up)} (the black triangles on the drawing).`,
  );

  if (sheet.corners.length > 0) {
    heading(flow, 'Corners');
    const rounded = sheet.corners.some((c) => c.rounding !== null);
    table(
      flow,
      [
        { head: 'Corner', share: 0.8 },
        number(fromAcross),
        number(fromUp),
        number('angle', 0.7),
        { head: 'between edges', share: 1.6 },
        ...(rounded
          ? [
              number('radius', 0.9),
              { ...number('rounding begins', 1.9) },
              { ...number('rounding ends', 1.9) },
              { ...number('its centre', 1.9) },
            ]
          : []),
      ],
      sheet.corners.map((c) => [
        String(c.number),
        ...point(c.at),
        sayAngle(c.insideAngle_rad),
        c.edges.join(' / '),
        ...(rounded
          ? c.rounding === null
            ? ['sharp', '', '', '']
            : [
                cell(c.radius_m),
                pair(c.rounding.begin, system),
                pair(c.rounding.end, system),
                pair(c.rounding.centre, system),
              ]
          : []),
      ]),
    );
    if (rounded)
      paragraph(
        flow,
        `Corners are the square corners before rounding. Pairs: ${fromAcross}, then ${fromUp}.`,
        {
          size: 8,
        },
      );
  }

  if (sheet.oval !== null) {
    const o = sheet.oval;
    const round = o.halfLength_m === o.halfWidth_m;
    heading(flow, round ? 'Round' : 'Oval');
    table(
      flow,
      [{ head: '', share: 2 }, number(fromAcross), number(fromUp)],
      round
        ? [['centre (pin of the trammel)', ...point(o.centre)]]
        : [
            ['centre', ...point(o.centre)],
            ['first nail', ...point(o.nails[0])],
            ['second nail', ...point(o.nails[1])],
          ],
    );
    paragraph(
      flow,
      round
        ? `Radius ${both(o.halfLength_m, system)}.`
        : `Half axes ${both(o.halfLength_m, system)} and ${both(o.halfWidth_m, system)}. A loop of string ` +
            `${both(o.string_m, system)} long, laid round both nails and kept tight, leads the pencil along the outline.`,
    );
  }

  if (sheet.arcs.length > 0) {
    heading(flow, 'Curved edges');
    table(
      flow,
      [
        { head: 'Edge', share: 1.2 },
        number('radius'),
        number('along the curve'),
        number('begins', 1.9),
        number('ends', 1.9),
        number('centre', 1.9),
        { head: 'curves', share: 0.8 },
      ],
      sheet.arcs.map((a) => [
        a.edge,
        cell(a.radius_m),
        cell(a.length_m),
        pair(a.begin, system),
        pair(a.end, system),
        pair(a.centre, system),
        a.hollow ? 'inwards' : 'outwards',
      ]),
    );
  }

  if (sheet.diagonals.length > 0) {
    heading(flow, 'Diagonals for the glue-up');
    paragraph(flow, 'From corner to corner, before rounding. Check them before the glue sets.', {
      size: 8.5,
    });
    const side: Column[] = [
      { head: 'Corners', share: 1 },
      number('should be', 1.3),
      { head: 'measured', share: 1.4 },
    ];
    const rows = sheet.diagonals.map((d): Cell[] => [`${d.from} – ${d.to}`, cell(d.length_m), '']);
    const half = Math.ceil(rows.length / 2);
    table(
      flow,
      [...side, ...side],
      rows.slice(0, half).map((row, i) => [...row, ...(rows[half + i] ?? ['', '', ''])]),
    );
  }

  if (sheet.cutOuts.length > 0) {
    heading(flow, 'Cut-outs');
    const opposite = { left: 'right', right: 'left', front: 'back', back: 'front' } as const;
    table(
      flow,
      [
        { head: 'Cut-out', share: 1.5 },
        { head: 'size', share: 2.5 },
        number(`centre ${fromAcross}`),
        number(`centre ${fromUp}`),
        number(`near edge ${fromAcross}`),
        number(`far edge ${fromAcross}`),
        number(`near edge ${fromUp}`),
        number(`far edge ${fromUp}`),
        number(`far edge to ${opposite[across.side]}`),
        number(`far edge to ${opposite[up.side]}`),
      ],
      sheet.cutOuts.map((c) => [
        [c.name === '' ? 'unnamed' : c.name, c.rim === 'wrapped' ? 'rim wrapped' : 'rim dammed'],
        sizeCell(c, system),
        ...point(c.centre),
        cell(c.near.across_m),
        cell(c.far.across_m),
        cell(c.near.up_m),
        cell(c.far.up_m),
        cell(c.beyond.across_m),
        cell(c.beyond.up_m),
      ]),
    );
  }

  heading(flow, 'Edges');
  table(
    flow,
    [
      { head: 'Edge', share: 1.4 },
      { head: 'kind', share: 1 },
      number('length'),
      number('face height'),
      { head: 'profile', share: 2 },
      number('return underneath'),
    ],
    [
      ...sheet.edges.map((e): Cell[] => [
        e.name,
        e.kind,
        cell(e.length_m),
        cell(e.faceHeight_m),
        sayProfile(e.profile, system),
        e.undersideReturn_m === 0 ? 'none' : cell(e.undersideReturn_m),
      ]),
      ...sheet.rims.map((r): Cell[] => [
        `rim of ${r.name === '' ? 'unnamed' : r.name}`,
        r.rim,
        cell(r.length_m),
        cell(r.faceHeight_m),
        '',
        '',
      ]),
    ],
  );

  if (splashes.length > 0) {
    heading(flow, 'Splashes');
    table(
      flow,
      [{ head: 'Splash', share: 2 }, number('length'), number('height'), number('thickness')],
      splashes.map((s): Cell[] => [s.name, cell(s.length_m), cell(s.height_m), cell(s.thickness_m)]),
    );
    paragraph(flow, 'Boards of their own; dashed on the drawing where they stand on the top.', { size: 8 });
  }

  heading(flow, 'Sums that must come out');
  for (const sum of sheet.checks) {
    const angles = sum.kind === 'inside angles';
    const say = (value: number): string =>
      angles ? sayAngle(value) : sayMillimetres(value).replace(' mm', '');
    const of = sum.of === undefined ? '' : ` (${sum.of === '' ? 'unnamed' : sum.of})`;
    const parts = sum.parts.map((p) => `${p.name} ${say(p.value)}`).join(' + ');
    paragraph(
      flow,
      `${sum.kind.slice(0, 1).toUpperCase()}${sum.kind.slice(1)}${of}: ${parts} = ${say(sum.total)}${angles ? '' : ' mm'}`,
      { size: 8.5 },
    );
  }
  paragraph(flow, 'Each figure is rounded by itself, so a sum may be off by its last digit.', { size: 8 });
}

function both(value_m: number, system: System): string {
  return system === 'us'
    ? `${sayLength(value_m, 'us')} (${sayMillimetres(value_m)})`
    : sayMillimetres(value_m);
}

/** "25 1⁄2 in, 3 in" over "647.7, 76.2 mm". */
function pair(c: Coordinates, system: System): Cell {
  const metric = `${sayMillimetres(c.across_m).replace(' mm', '')}, ${sayMillimetres(c.up_m)}`;
  return system === 'us' ? [`${sayLength(c.across_m, 'us')}, ${sayLength(c.up_m, 'us')}`, metric] : metric;
}

function sizeCell(c: SetOut['cutOuts'][number], system: System): Cell {
  const say = (metric: boolean): string => {
    const length = (value_m: number): string =>
      metric ? sayMillimetres(value_m) : sayLength(value_m, system);
    if (c.shape === 'round') return `Ø ${length(c.length_m)}`;
    const corner = c.cornerRadius_m > 0 ? `, R ${length(c.cornerRadius_m)}` : '';
    return `${length(c.length_m)} × ${length(c.width_m)}${corner}`;
  };
  const shape = [
    c.shape,
    ...(c.rotation_rad === 0 ? [] : [`turned ${sayAngle(c.rotation_rad)} anticlockwise`]),
  ].join(', ');
  return system === 'us' ? [say(false), say(true), shape] : [say(true), shape];
}
