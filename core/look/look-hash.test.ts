import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalText, fnv1a64 } from './look-hash.ts';

/** Test vectors published with the function, of the empty text, "a" and "foobar". */
test.each([
  ['', 'cbf29ce484222325'],
  ['a', 'af63dc4c8601ec8c'],
  ['foobar', '85944171f73967e8'],
])('FNV-1a of "%s" is %s', (text, hash) => {
  expect(fnv1a64(text)).toBe(hash);
});

test('agrees with the definition in whole numbers of any length', () => {
  const slow = (text: string) => {
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text))
      hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) % 2n ** 64n;
    return hash.toString(16).padStart(16, '0');
  };
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      expect(fnv1a64(text)).toBe(slow(text));
    }),
  );
});

test('the order in which fields were written does not matter', () => {
  expect(canonicalText({ b: [1, { d: 2, c: undefined }], a: 'x' })).toBe('{"a":"x","b":[1,{"d":2}]}');
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
      const backwards = Object.fromEntries(Object.entries(value).reverse());
      expect(canonicalText(backwards)).toBe(canonicalText(value));
      expect(JSON.parse(canonicalText(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});
