/**
 * Ids are made here, by the client, so that repeating a request is harmless. UUID version 7 (RFC 9562, section 5.7):
 * 48 bits of milliseconds, then random bits, so ids sort by the time they were made.
 */
export function uuid7(
  now_ms: number = Date.now(),
  random: Uint8Array = crypto.getRandomValues(new Uint8Array(10)),
): string {
  if (!Number.isInteger(now_ms) || now_ms < 0 || now_ms >= 2 ** 48)
    throw new RangeError(`now_ms is ${now_ms}; allowed: a whole number of milliseconds under 2^48`);
  if (random.length !== 10) throw new RangeError(`random has ${random.length} bytes; allowed: 10`);
  const bytes = new Uint8Array(16);
  for (let i = 0; i < 6; i++) bytes[i] = Math.floor(now_ms / 2 ** (8 * (5 - i))) % 256;
  bytes.set(random, 6);
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
