/** What stands beside a figure of the label once it was fitted: contradictions first, then whether it told anything. Pure. */
import type { Figure } from '#core/resin/label.ts';
import { sayFigure } from '#core/resin/label-terms.ts';
import type { CardAccount } from '#core/resin/model.ts';

export interface FigureNote {
  readonly tone: 'stop' | 'quiet';
  readonly words: string;
}

export function figureNotes(figure: Figure, account: CardAccount | undefined): FigureNote[] {
  if (account === undefined) return [];
  const said = sayFigure(figure);
  const against = account.tensions
    .filter((each) => each.said === said || each.against === said)
    .map(({ words }): FigureNote => ({ tone: 'stop', words: `Contradiction: ${words}` }));
  if (against.length > 0) return against;
  if (account.plateau.includes(said))
    return [
      {
        tone: 'quiet',
        words:
          'Tells nothing: by then the reaction has long stopped for cold, so any later time would fit as well. Not used.',
      },
    ];
  const told = account.figures.find((each) => each.said === said);
  if (told === undefined) return [];
  if (told.taught === null) return [{ tone: 'quiet', words: 'Agrees with the rest and tells nothing new.' }];
  const narrower = Math.round(100 * (1 - told.narrowedTo));
  return [{ tone: 'quiet', words: `Tells most about ${told.taught}: ${narrower} % narrower by it.` }];
}
