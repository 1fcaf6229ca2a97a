import { describe, expect, it } from 'vitest';
import {
  fineText,
  formulaText,
  movesText,
  numberText,
  perRunText,
  plainNumber,
  rangeText,
  signsText,
} from './reason-words.ts';

describe('a reason in words', () => {
  it('shows formulas with signs, and says what they mean', () => {
    expect(formulaText('h = sqrt(z/(rho g Theta left)) below')).toBe('h = √(z/(ρ g Θ left)) below');
    expect(formulaText('(rho g - gamma k^2)/(2k)')).toBe('(ρ g − γ k²)/(2k)');
    expect(formulaText('R = 0.894 (rho g V^3 Theta/3)^(1/8)')).toBe('R = 0.894 (ρ g V³ Θ/3)^⅛');
    expect(signsText('h = sqrt(z/(rho g))')).toBe('ρ density; g gravity');
    expect(signsText('gel when a = a gel; viscosity = R * fresh')).toBe(
      'a is the share of the reaction done; R is how many times thicker',
    );
    expect(signsText('viscosity falls 8 % a kelvin')).toBe('');
    expect(signsText('shrinkage after gel times depth')).toBe('');
  });

  it('shows small lengths in units that show something', () => {
    expect(fineText(0.0000241, 'metric')).toBe('24 µm');
    expect(fineText(0.0000241, 'us')).toBe('0.9 mil');
    expect(fineText(0.003175, 'us')).toBe('1/8 in');
    expect(fineText(0.00127, 'metric')).toBe('1.27 mm');
    expect(perRunText(6.92e-6, 'metric')).toBe('6.9 mL a metre');
    // 6.92 mL/m x 0.3048 m / 29.5735 mL
    expect(perRunText(6.92e-6, 'us')).toBe('0.07 fl oz a foot');
  });

  it('names numbers by what they are', () => {
    expect(numberText('thetaLeft_per_Pa', 19.52, 'us')).toEqual(['flow budget left', '19.5 per Pa']);
    expect(numberText('faceHeight_m', 0.0381, 'us')).toEqual(['face height', '1 1/2 in']);
    expect(numberText('advancingAngle_deg', 30, 'metric')).toEqual(['advancing angle', '30°']);
    expect(numberText('surfaceAfter10s_K', 5, 'metric')[1]).toContain('5.0');
    expect(numberText('comesDown_m2', 1e-5, 'metric')).toEqual(['comes down the edge', '10.0 mL a metre']);
  });

  it('has plain numbers and ranges of every kind', () => {
    expect(plainNumber(0.0005)).toBe('0.0005');
    expect(plainNumber(3660.8)).toBe('3661');
    expect(plainNumber(0)).toBe('0');
    const spread = { low: 600, value: 720, high: 900 };
    expect(rangeText(spread, 'time', 'us')).toBe('12 (10 to 15) min');
    expect(rangeText({ low: 2, value: 3, high: 4.5 }, 'e-folds', 'us')).toBe(
      '0.5 to 1.13 times the flow it takes to show',
    );
    // 1/sqrt(1.5) and sqrt(1.5): a viscosity off by half in what goes with its root
    expect(movesText({ low: 1 / 1.224745, value: 1, high: 1.224745 })).toBe('−18 % to +22 %');
    expect(movesText({ low: 1, value: 1, high: 1 })).toBe('');
    expect(rangeText({ low: 2e-5, value: 2.4e-5, high: 3e-5 }, 'film', 'metric')).toBe('20 µm to 30 µm');
  });
});
