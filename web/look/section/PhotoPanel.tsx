import { useEffect, useId, useRef, useState } from 'react';
import type { CoatLook } from '#core/job/look-of-coat.ts';
import { composeLook } from '#core/look/compose.ts';
import { briefFromPatches } from '#core/look/photo-brief.ts';
import { boxOf } from '#core/look/read-look.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import { formatPercent } from '#core/quantity/format.ts';
import { fixed } from '#core/quantity/rounding.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { Chosen } from './Chosen.tsx';
import { keysOf } from './edit-look.ts';
import { type PhotoFrame, type PhotoPixels, type PhotoReading, planOf, readPhoto } from './photo-reading.ts';
import type { SeenLook } from './use-coat-look.ts';

/** Pixels across: colours and patches need no more. */
const COLUMNS = 480;
const LEAST_SHARE = 0.001;
const WHOLE: PhotoFrame = { left: 0, top: 0, right: 1, bottom: 1 };
const KNOWN = [
  { value: 'none', label: 'nothing: as the camera saw it' },
  { value: '0.18', label: 'a grey card (18 %)' },
  { value: '0.82', label: 'a white card (82 %)' },
] as const;
const SIDES = ['left', 'right', 'top', 'bottom'] as const;

/** A photograph of a finished top beside its plan. It stays on this device. */
export function PhotoPanel({ seen, made }: { readonly seen: SeenLook; readonly made: CoatLook }) {
  const { speak } = useSheet();
  const [pixels, setPixels] = useState<PhotoPixels | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const [frame, setFrame] = useState<PhotoFrame>(WHOLE);
  const [known, setKnown] = useState<(typeof KNOWN)[number]['value']>('none');
  const [spot, setSpot] = useState({ x: 0.05, y: 0.05 });
  const [reading, setReading] = useState<PhotoReading | null>(null);
  const id = useId();
  const keys = keysOf(seen.coat.colours);
  const { colours, panels } = made.setting;
  const nameOf = (key: string) => colours.find((colour) => colour.key === key)?.name ?? key;

  const load = async (file: File | undefined) => {
    if (file === undefined) return;
    setReading(null);
    try {
      setPixels(await pixelsOf(file));
      setFailed(null);
      setFrame(WHOLE);
    } catch {
      setPixels(null);
      setFailed(`${file.name} could not be read as a picture. Allowed: JPEG, PNG, WebP.`);
    }
  };
  const read = () => {
    if (pixels === null) return;
    const plan = planOf(colours, pouredShares(made.look, keys, made.whole_m3));
    const reference = known === 'none' ? null : { ...spot, known: Number(known) };
    setReading(readPhoto(pixels, frame, reference, plan, 2 * boxOf(panels).half_m[0]));
  };
  const repeat = () => {
    if (reading === null) return;
    const wanted = new Map(reading.differences.map(({ key, found }) => [key, Math.max(LEAST_SHARE, found)]));
    const brief = { ...made.look.brief, ...briefFromPatches(reading.sizes, made.look.brief) };
    const composed = composeLook({ ...made.look, brief, ground: '' }, wanted, made.setting);
    if (composed.ok) seen.put('Look from a photo', composed.value.look);
    else setFailed(composed.problems.map(({ message }) => message).join(' '));
  };

  return (
    <div className="look-photo">
      <div className="field">
        <label className="field-label" htmlFor={id}>
          Photograph of a finished top, straight from above (it stays on this device)
        </label>
        <input
          id={id}
          type="file"
          accept="image/*"
          onChange={(event) => void load(event.target.files?.[0])}
        />
      </div>
      {failed !== null && (
        <p className="problem-block" role="alert">
          {failed}
        </p>
      )}
      {pixels !== null && (
        <>
          <Shown
            pixels={pixels}
            frame={frame}
            spot={known === 'none' ? null : spot}
            onTap={(x, y) => {
              setSpot({ x, y });
              setReading(null);
            }}
          />
          <div className="form form-tight">
            <Chosen
              label="In the same light lies"
              value={known}
              options={KNOWN}
              onChange={(value) => {
                setKnown(value);
                setReading(null);
              }}
            />
            {known !== 'none' &&
              (['x', 'y'] as const).map((axis) => (
                <Percent
                  key={axis}
                  label={axis === 'x' ? 'The card, % from the left' : 'The card, % from the top'}
                  value={spot[axis]}
                  onChange={(value) => {
                    setSpot((was) => ({ ...was, [axis]: value }));
                    setReading(null);
                  }}
                />
              ))}
            {SIDES.map((side) => (
              <Percent
                key={side}
                label={`The top begins, % off the ${side}`}
                value={side === 'left' || side === 'top' ? frame[side] : 1 - frame[side]}
                most={0.45}
                onChange={(value) => {
                  setFrame((was) => ({
                    ...was,
                    [side]: side === 'left' || side === 'top' ? value : 1 - value,
                  }));
                  setReading(null);
                }}
              />
            ))}
          </div>
          {known !== 'none' && (
            <p className="section-note">Tap the card in the picture, or give its place.</p>
          )}
          <p className="actions">
            <button type="button" onClick={read}>
              Read the colours
            </button>
          </p>
        </>
      )}
      {reading !== null && (
        <>
          <table className="ledger">
            <caption>The photograph beside the plan</caption>
            <thead>
              <tr>
                <th scope="col">Colour</th>
                <th scope="col" className="number">
                  Planned
                </th>
                <th scope="col" className="number">
                  In the photo
                </th>
                <th scope="col" className="number">
                  Colour off by (Delta E 2000)
                </th>
              </tr>
            </thead>
            <tbody>
              {reading.differences.map(({ key, planned, found, difference }, at) => (
                <tr key={key}>
                  <th scope="row">
                    <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
                      <rect width="10" height="10" fill={reading.colours[at]!.hex} className="share-part" />
                    </svg>{' '}
                    {nameOf(key)}
                  </th>
                  <td className="number" data-label="Planned">
                    {formatPercent(planned, { decimals: 1 })}
                  </td>
                  <td className="number" data-label="In the photo">
                    {formatPercent(found, { decimals: 1 })}
                  </td>
                  <td className="number" data-label="Off by">
                    {found === 0 ? 'not found' : fixed(difference, 1)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="section-note">
            Patches about {speak.length(reading.sizes.block_m)} across.{' '}
            {known === 'none'
              ? 'Without a card in the same light the colours are only what the camera made of them; the shares hold.'
              : reading.referenceUsed && reading.error !== null
                ? `A colour read this way lies within about ${fixed(reading.error, 1)} Delta E 2000 in two of three pictures.`
                : 'The card is too dark or overexposed where it was picked; nothing was corrected.'}
          </p>
          <p className="actions">
            <button type="button" onClick={repeat}>
              Make a look like this photo
            </button>
          </p>
        </>
      )}
    </div>
  );
}

async function pixelsOf(file: File): Promise<PhotoPixels> {
  const bitmap = await createImageBitmap(file);
  const columns = Math.min(COLUMNS, bitmap.width);
  const rows = Math.max(1, Math.round((bitmap.height / bitmap.width) * columns));
  const canvas = window.document.createElement('canvas');
  canvas.width = columns;
  canvas.height = rows;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser draws no pictures');
  context.drawImage(bitmap, 0, 0, columns, rows);
  bitmap.close();
  return { columns, rows, rgba: context.getImageData(0, 0, columns, rows).data };
}

interface ShownProps {
  readonly pixels: PhotoPixels;
  readonly frame: PhotoFrame;
  readonly spot: { readonly x: number; readonly y: number } | null;
  readonly onTap: (x: number, y: number) => void;
}

function Shown({ pixels, frame, spot, onTap }: ShownProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined) return;
    const image = context.createImageData(pixels.columns, pixels.rows);
    image.data.set(pixels.rgba);
    context.putImageData(image, 0, 0);
  }, [pixels]);
  const { columns, rows } = pixels;
  return (
    <div className="look-photo-shown">
      <canvas ref={canvas} width={columns} height={rows} role="img" aria-label="The photograph" />
      <svg
        viewBox={`0 0 ${columns} ${rows}`}
        aria-hidden="true"
        onPointerDown={(event) => {
          const box = event.currentTarget.getBoundingClientRect();
          onTap((event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height);
        }}
      >
        <rect
          x={frame.left * columns}
          y={frame.top * rows}
          width={(frame.right - frame.left) * columns}
          height={(frame.bottom - frame.top) * rows}
        />
        {spot !== null && <circle cx={spot.x * columns} cy={spot.y * rows} r="8" />}
      </svg>
    </div>
  );
}

interface PercentProps {
  readonly label: string;
  readonly value: number;
  readonly most?: number;
  readonly onChange: (value: number) => void;
}

function Percent({ label, value, most = 1, onChange }: PercentProps) {
  const id = useId();
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="number"
        inputMode="numeric"
        min={0}
        max={most * 100}
        step={1}
        value={Math.round(value * 100)}
        onChange={(event) => {
          const typed = Number(event.target.value);
          if (Number.isFinite(typed)) onChange(Math.min(most, Math.max(0, typed / 100)));
        }}
      />
    </div>
  );
}
