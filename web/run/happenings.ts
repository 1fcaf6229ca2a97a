/** What a person is asked about each thing that may happen. Pure. */
import type { Happening } from '#core/pour/run/run-event.ts';

export interface HappeningAsk {
  readonly what: Happening;
  readonly label: string;
  /** Whether it is asked which cup, how much is missing, how wide it is, how long one is away. */
  readonly asks: readonly ('cup' | 'mass' | 'size' | 'away')[];
}

export const HAPPENING_ASKS: readonly HappeningAsk[] = [
  { what: 'cup hot', label: 'A cup is getting hot', asks: ['cup'] },
  { what: 'spill', label: 'Resin was spilt', asks: ['cup', 'mass'] },
  { what: 'short of a colour', label: 'A colour does not reach', asks: ['cup', 'mass'] },
  { what: 'crater', label: 'A crater, a fish eye', asks: ['size'] },
  { what: 'called away', label: 'Called away', asks: ['away'] },
  { what: 'something else', label: 'Something else', asks: [] },
];
