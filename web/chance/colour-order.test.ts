import { describe, expect, it } from 'vitest';
import { coloursInOrder } from './colour-order.ts';

const colour = (name: string, key = '') => ({
  ...{ name, key, swatch: '#112233', share: '50 %', colourant: 'none' as const, load: '' },
  appearance: null,
});
const turn = (cup: number, name: string) => ({ cup, colour: name, mixer: 2 });

describe('an order of cups as an order of colours', () => {
  const colours = [colour('ink'), colour('sea', 's'), colour('copper')];

  it('keeps what the look calls each colour', () => {
    const then = coloursInOrder(colours, [turn(4, 'copper'), turn(1, 'ink'), turn(2, 'ink'), turn(3, 'sea')]);
    expect(then?.map(({ name, key }) => [name, key])).toEqual([
      ['copper', '3'],
      ['ink', '1'],
      ['sea', 's'],
    ]);
  });

  it('is none where the colours cannot say it', () => {
    expect(coloursInOrder(colours, [turn(1, 'ink'), turn(3, 'sea'), turn(4, 'copper')])).toBeNull();
    expect(
      coloursInOrder(colours, [turn(1, 'ink'), turn(3, 'sea'), turn(2, 'ink'), turn(4, 'copper')]),
    ).toBeNull();
    expect(
      coloursInOrder(colours, [turn(3, 'sea'), turn(2, 'ink'), turn(1, 'ink'), turn(4, 'copper')]),
    ).toBeNull();
    expect(coloursInOrder([colour('ink'), colour('ink')], [turn(2, 'ink'), turn(1, 'ink')])).toBeNull();
  });
});
