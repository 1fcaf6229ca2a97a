import fc from 'fast-check';
import { expect, it } from 'vitest';
import { HANDLE_GAP_px, spreadHandles } from './handle-places.ts';

const room = { width: 360, height: 190 };
const pixel = fc.record({
  x: fc.double({ min: 15, max: 345, noNaN: true }),
  y: fc.double({ min: 15, max: 175, noNaN: true }),
});

it('keeps every two handles apart and in the room, wherever twenty puddles lie', () => {
  fc.assert(
    fc.property(fc.array(pixel, { minLength: 1, maxLength: 20 }), (at) => {
      const places = spreadHandles(at, room);
      expect(places).toHaveLength(at.length);
      for (const [i, a] of places.entries()) {
        expect(a.x >= 0 && a.x <= room.width && a.y >= 0 && a.y <= room.height).toBe(true);
        for (const b of places.slice(0, i)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(26);
      }
    }),
    { numRuns: 200 },
  );
});

it('opens a heap of puddles on one spot', () => {
  const places = spreadHandles(
    Array.from({ length: 8 }, () => ({ x: 20, y: 20 })),
    room,
  );
  for (const [i, a] of places.entries())
    for (const b of places.slice(0, i)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(26);
});

it('leaves handles that are apart where they are', () => {
  const at = Array.from({ length: 12 }, (_, i) => ({
    x: 20 + (i % 6) * HANDLE_GAP_px,
    y: 20 + Math.floor(i / 6) * HANDLE_GAP_px,
  }));
  expect(spreadHandles(at, room)).toEqual(at);
});
