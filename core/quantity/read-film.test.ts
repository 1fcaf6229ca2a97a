import { describe, expect, it, test } from 'vitest';
import { readFilm_m } from './read-film.ts';

function outcome(text: string, density_kg_m3?: number): number | string {
  const result = readFilm_m(text, { density_kg_m3 });
  return result.ok ? result.value : (result.problems[0]?.code ?? '');
}

describe('films', () => {
  test.each([
    ['1.3 mm', 1.3],
    ['50 mil', 1.27],
    ['1/16 in', 1.5875],
    ['1/16"', 1.5875],
    ['4 fl oz/sq ft', 1.2733073],
    ['4 fl. oz. per sq. ft.', 1.2733073],
    ['4 fl oz / ft²', 1.2733073],
    ['40 sq ft/gal', 1.0186458],
    ['10 ft2/qt', 1.0186458],
    ['1.3 L/m2', 1.3],
    ['1300 mL/m²', 1.3],
    ['0.8 m2/L', 1.25],
    ['0.8 m² per litre', 1.25],
  ])('%s is %d mm', (text, expected_mm) => {
    expect(Number(outcome(text)) * 1000).toBeCloseTo(expected_mm, 6);
  });

  test.each([
    ['1.4 kg/m2', 1.2727273],
    ['1400 g/m²', 1.2727273],
    ['130 g/sq ft', 1.2720985],
    ['4 oz by weight/sq ft', 1.1096426],
    ['4 oz (weight) per sq ft', 1.1096426],
    ['4 oz/sq ft by weight', 1.1096426],
    ['4 oz av/ft2', 1.1096426],
  ])('%s of 1100 kg/m3 is %d mm', (text, expected_mm) => {
    expect(Number(outcome(text, 1100)) * 1000).toBeCloseTo(expected_mm, 6);
    expect(outcome(text)).toBe('film.no-density');
  });

  test.each([
    ['4 oz/sq ft', 'film.oz'],
    ['4 ounces per square foot', 'film.oz'],
    ['32 sq ft/oz', 'film.oz'],
    ['4 oz', 'film.no-area'],
    ['4', 'film.no-unit'],
    ['0 sq ft/gal', 'film.range'],
    ['-1 mm', 'film.range'],
    ['4 fl oz', 'film.unknown-unit'],
    ['4 gal/in', 'film.unknown-unit'],
    ['4 a/b/c', 'film.unknown-unit'],
    ['2 mm 3 fl oz/sq ft', 'film.unreadable'],
  ])('%s is refused as %s', (text, code) => {
    expect(outcome(text, 1100)).toBe(code);
  });

  it('tells the range in the unit typed, turned round for spreading rates', () => {
    const ask = { min: 0.0001, max: 0.003 };
    const told = (text: string) => {
      const result = readFilm_m(text, ask);
      return result.ok ? '' : result.problems[0]?.allowed;
    };
    expect(told('5 mm')).toBe('0.1 mm to 3 mm');
    expect(told('1 sq ft/gal')).toBe('13.59 sq ft/gal to 407.4 sq ft/gal');
    expect(told('20 fl oz/sq ft')).toBe('0.3142 fl oz/sq ft to 9.424 fl oz/sq ft');
  });

  it("throws on a density that no resin has, which is not the typist's mistake", () => {
    expect(() => readFilm_m('1 mm', { density_kg_m3: 0 })).toThrow(
      /density_kg_m3 is 0; allowed: more than 0/,
    );
  });
});
