/** Splashes: what each covers of the top, dashed along its side, with its name and height. */
import { bounds } from '#core/piece/path.ts';
import type { SplashStrip } from '#core/piece/splash-strips.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { type Box, covered, textWidth } from '#web/charts/label-places.ts';
import { crossesBox, extensionEnds } from './extension.ts';
import { type Pixel, px, toPixel } from './frame.ts';
import type { Sheet } from './sheet.ts';

interface Props {
  readonly strips: readonly SplashStrip[];
  readonly sheet: Sheet;
  readonly system: System;
  readonly names: boolean;
  /** What the words keep clear of: the rims of the holes. */
  readonly holes: readonly Parameters<typeof bounds>[0][];
}

/** Thinner than this the two long sides of a strip would be one line, px. */
const THINNEST_PX = 5;

/** "backsplash, 4 in high" */
export function splashWords({ name, height_m }: SplashStrip, system: System): string {
  return `${name}, ${formatLength(height_m, system)} high`;
}

export function DrawnSplashes({ strips, sheet, system, names, holes }: Props) {
  const taken = holes.map((hole): Box => {
    const box = bounds(hole);
    const low = toPixel(sheet.frame, { x_m: box.minX_m, y_m: box.minY_m });
    const high = toPixel(sheet.frame, { x_m: box.maxX_m, y_m: box.maxY_m });
    return { left: low.x, right: high.x, top: high.y, bottom: low.y };
  });
  return strips.map((strip) => {
    const [from, to, inner, last] = cornersOf(strip, sheet);
    return (
      <g key={strip.side} className="drawing-splash">
        <path
          d={`M${[from, to, inner, last].map(({ x, y }) => `${px(x)} ${px(y)}`).join('L')}Z`}
          className="drawing-splash-strip"
        />
        {names && sheet.width >= NARROW_PX && (
          <SplashName words={splashWords(strip, system)} from={last} to={inner} sheet={sheet} taken={taken} />
        )}
      </g>
    );
  });
}

/** As pixels, widened inwards where it would be too thin to see. */
function cornersOf(strip: SplashStrip, sheet: Sheet): readonly [Pixel, Pixel, Pixel, Pixel] {
  const [from, to, inner, last] = strip.corners.map((p) => toPixel(sheet.frame, p)) as [
    Pixel,
    Pixel,
    Pixel,
    Pixel,
  ];
  const deep = Math.hypot(last.x - from.x, last.y - from.y);
  const more = deep > 0 ? Math.max(1, THINNEST_PX / deep) : 1;
  const pushed = (p: Pixel, base: Pixel): Pixel => ({
    x: base.x + (p.x - base.x) * more,
    y: base.y + (p.y - base.y) * more,
  });
  return [from, to, pushed(inner, to), pushed(last, from)];
}

/** A narrower sheet has no room for names inside the piece beside those of the holes; the legend tells them. */
const NARROW_PX = 560;

/** Places tried along the strip, from its middle outwards. */
const PARTS = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82];

interface NameProps {
  readonly words: string;
  /** Its inner side. */
  readonly from: Pixel;
  readonly to: Pixel;
  readonly sheet: Sheet;
  readonly taken: readonly Box[];
}

/** Inside the piece beside the strip, along it; where it has no room, it is told in the legend and the table alone. */
function SplashName({ words, from, to, sheet, taken }: NameProps) {
  const { size } = sheet;
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const long = textWidth(words, size) * 1.08;
  if (!(run > long + 8)) return null;
  // The piece lies to the left of the side as it runs, which on the screen is a quarter turn the other way.
  const along = { x: (to.x - from.x) / run, y: (to.y - from.y) / run };
  const into = { x: along.y, y: -along.x };
  const level = Math.abs(along.x) > Math.abs(along.y);
  const lines = sheet.dimensions.flatMap(extensionEnds);
  const spotAt = (part: number): Pixel => ({
    x: from.x + along.x * run * part + into.x * size * 0.9,
    y: from.y + along.y * run * part + into.y * size * 0.9,
  });
  const boxAt = ({ x, y }: Pixel): Box => {
    const [wide, tall] = level ? [long, size * 1.2] : [size * 1.2, long];
    return { left: x - wide / 2, right: x + wide / 2, top: y - tall / 2, bottom: y + tall / 2 };
  };
  const fits = PARTS.filter((part) => Math.min(part, 1 - part) * run >= long / 2 + 2);
  const offHoles = fits.filter((part) => covered(boxAt(spotAt(part)), taken) === 0);
  const clear = (part: number): boolean => !lines.some((line) => crossesBox(line, boxAt(spotAt(part))));
  const part = offHoles.find(clear) ?? offHoles[0];
  if (part === undefined) return null;
  const at = spotAt(part);
  let turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (turn > 89.9) turn -= 180;
  if (turn < -90.1) turn += 180;
  return (
    <text
      className="drawing-name"
      x={px(at.x)}
      y={px(at.y + size * 0.35)}
      fontSize={size}
      textAnchor="middle"
      {...(Math.abs(turn) < 0.1 ? {} : { transform: `rotate(${px(turn)} ${px(at.x)} ${px(at.y)})` })}
    >
      {words}
    </text>
  );
}
