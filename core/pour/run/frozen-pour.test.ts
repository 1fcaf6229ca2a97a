import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { planCoat } from '../plan-coat.ts';
import { changedSince } from './changed-since.ts';
import { FrozenPourDocument, freezePour, frozenText, hashOf } from './frozen-pour.ts';
import { plan, request } from './sample-run.check.ts';

const frozen = freezePour(request, plan, '7');

describe('a frozen pour', () => {
  it('is the same after a trip through a file', () => {
    expect(FrozenPourDocument.parse(JSON.parse(frozenText(frozen)))).toEqual(frozen);
  });

  it('has a hash that does not hang on the order of keys, and is that of another implementation of SHA-256', () => {
    const { hash, ...body } = frozen;
    const turned = Object.fromEntries(Object.entries(body).reverse()) as typeof body;
    expect(hashOf(turned)).toBe(hash);
    const sorted = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(sorted)
        : value !== null && typeof value === 'object'
          ? Object.fromEntries(
              Object.entries(value)
                .sort(([a], [b]) => (a < b ? -1 : 1))
                .map(([key, each]) => [key, sorted(each)]),
            )
          : value;
    expect(
      createHash('sha256')
        .update(JSON.stringify(sorted(JSON.parse(frozenText(body)))))
        .digest('hex'),
    ).toBe(hash);
  });

  it('is refused by name when anything in it was changed', () => {
    const text = frozenText({ ...frozen, plan: { ...frozen.plan, slack_s: frozen.plan.slack_s + 1 } });
    const changed = JSON.parse(text) as object;
    const read = FrozenPourDocument.safeParse(changed);
    expect(read.error?.issues).toMatchObject([{ path: ['hash'] }]);
    expect(FrozenPourDocument.safeParse({ ...frozen, hash: 'x' }).success).toBe(false);
    expect(FrozenPourDocument.safeParse(null).success).toBe(false);
  });

  it('can be planned again from its inputs alone, to the same plan', () => {
    const again = planCoat({ ...frozen.inputs, waysOut: false });
    expect(freezePour(frozen.inputs, again, '7').hash).toBe(frozen.hash);
  });
});

describe('what changed since', () => {
  const now = (change: Parameters<typeof planCoat>[0]) => ({
    inputs: change,
    plan: planCoat({ ...change, waysOut: false }),
    modelVersion: '7',
  });

  it('is nothing for the same job', () => {
    expect(changedSince(frozen, now(request), 'us')).toEqual([]);
  });

  it('names a warmer shop with both figures, and a new model', () => {
    const warm = { ...request, air: { time_s: [0], temperature_K: [request.air.temperature_K[0]! + 5] } };
    const changes = changedSince(frozen, { ...now(warm), modelVersion: '8' }, 'metric');
    expect(changes).toContainEqual({ what: 'Air', before: '24 °C', now: '29 °C' });
    expect(changes).toContainEqual({ what: 'Version of the model', before: '7', now: '8' });
  });
});
