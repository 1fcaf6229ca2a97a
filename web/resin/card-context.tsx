import { createContext, useContext } from 'react';
import type { System } from '#core/quantity/units.ts';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import type { CardRead } from '#core/resin/read-card.ts';
import type { Speak } from '#web/units/speak.ts';
import type { ShownFit } from './use-fit.ts';

/** One open resin card, for the sections of its page. */
export interface OpenCardState {
  readonly id: string;
  readonly document: ResinCardDocument;
  /** The document as read; null while something typed cannot be used. */
  readonly read: CardRead | null;
  readonly shown: ShownFit;
  readonly system: System;
  readonly speak: Speak;
  readonly edit: (
    label: string,
    place: string,
    make: (document: ResinCardDocument) => ResinCardDocument,
  ) => void;
}

const CardContext = createContext<OpenCardState | null>(null);
export const CardProvider = CardContext.Provider;

export function useCard(): OpenCardState {
  const card = useContext(CardContext);
  if (card === null) throw new Error('useCard is used outside a resin page');
  return card;
}
