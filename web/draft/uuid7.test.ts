import { describe, expect, it } from 'vitest';
import { uuid7 } from './uuid7.ts';

describe('ids made by the client', () => {
  it('give the example of RFC 9562, appendix A.6', () => {
    // 0x017F22E279B0 ms, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
    const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuid7(0x017f22e279b0, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
  });

  it('sort by the time they were made', () => {
    expect(uuid7(1_000) < uuid7(2_000)).toBe(true);
  });

  it('refuse a time that does not fit', () => {
    expect(() => uuid7(-1)).toThrow(RangeError);
    expect(() => uuid7(2 ** 48)).toThrow(RangeError);
  });
});
