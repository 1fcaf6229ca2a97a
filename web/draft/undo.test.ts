import { describe, expect, it } from 'vitest';
import { change, LONGEST_HISTORY, PAUSE_MS, redo, startHistory, undo } from './undo.ts';

describe('undo and redo', () => {
  it('takes typing in one place as one step', () => {
    let history = startHistory('');
    history = change(history, '4', 'Length', 'length', 0);
    history = change(history, '48', 'Length', 'length', 200);
    history = change(history, '48 in', 'Length', 'length', 400);
    expect(undo(history).present).toBe('');
  });

  it('opens a new step after a pause, in another place, and for every action', () => {
    let history = startHistory('a');
    history = change(history, 'b', 'Length', 'length', 0);
    history = change(history, 'c', 'Length', 'length', PAUSE_MS + 1);
    history = change(history, 'd', 'Width', 'width', PAUSE_MS + 2);
    history = change(history, 'e', 'Remove', '', PAUSE_MS + 3);
    history = change(history, 'f', 'Remove', '', PAUSE_MS + 4);
    const seen = [];
    for (let at = history; at.past.length > 0; at = undo(at)) seen.push(at.present);
    expect(seen).toEqual(['f', 'e', 'd', 'c', 'b']);
  });

  it('comes back by redo, until something new is done', () => {
    let history = change(startHistory('a'), 'b', 'One', '', 0);
    history = undo(history);
    expect(redo(history).present).toBe('b');
    expect(redo(change(history, 'c', 'Two', '', 1)).present).toBe('c');
  });

  it('does nothing at either end', () => {
    const history = startHistory('a');
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
  });

  it('forgets the oldest steps', () => {
    let history = startHistory(0);
    for (let i = 1; i <= LONGEST_HISTORY + 20; i++) history = change(history, i, 'Step', '', i);
    expect(history.past).toHaveLength(LONGEST_HISTORY);
    expect(history.past[0]!.document).toBe(20);
  });
});
