import { expect, it } from 'vitest';
import { MODEL_VERSION } from './model-version.ts';

it('is a whole number, so that later ones can be told from earlier ones', () => {
  expect(MODEL_VERSION).toMatch(/^[1-9]\d*$/);
});
