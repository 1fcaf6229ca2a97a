import { describe, expect, it } from 'vitest';
import { readingOf, typedSystem } from './reading.ts';

describe('what a typed quantity comes to in the other system', () => {
  it('turns a length round, whichever system is on screen', () => {
    expect(readingOf('length', '25 1/2 in', 'us')).toBe('648 mm');
    expect(readingOf('length', '25 1/2 in', 'metric')).toBe('648 mm');
    expect(readingOf('length', '648 mm', 'metric')).toBe('25 1/2 in');
    expect(readingOf('length', '648 mm', 'us')).toBe('25 1/2 in');
  });

  it('keeps tenths of a millimetre for what is small', () => {
    expect(readingOf('length', '1/8 in', 'us')).toBe('3.2 mm');
  });

  it('turns films, temperatures and weights round', () => {
    expect(readingOf('film', '4 fl oz/sq ft', 'us')).toBe('1.27 mm');
    expect(readingOf('film', '1.27 mm', 'us')).toBe('4.0 fl oz/sq ft');
    expect(readingOf('temperature', '75 F', 'us')).toBe('24 °C');
    expect(readingOf('temperature', '24 C', 'metric')).toBe('75 °F');
    expect(readingOf('mass', '900 g', 'metric')).toBe('2.0 lb');
    expect(readingOf('mass', '2 lb', 'us')).toBe('907 g');
  });

  it('has nothing to add to an empty or unreadable text, or to a share', () => {
    expect(readingOf('length', '', 'us')).toBeNull();
    expect(readingOf('length', 'about so', 'us')).toBeNull();
    expect(readingOf('percent', '55 %', 'us')).toBeNull();
  });
});

describe('the system a text is typed in', () => {
  it.each([
    ['25 1/2 in', 'us'],
    ['25"', 'us'],
    ['4 fl oz/sq ft', 'us'],
    ['75F', 'us'],
    ['648mm', 'metric'],
    ['1.2 mm', 'metric'],
    ['24 °C', 'metric'],
    ['1.3 kg/m2', 'metric'],
    ['48', null],
  ] as const)('%s: %s', (text, system) => {
    expect(typedSystem(text)).toBe(system);
  });
});
