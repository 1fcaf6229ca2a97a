/** Looks composed one after another by a worker: the first is there at once, the alternatives follow. */
import { useEffect, useRef, useState } from 'react';
import type { LookDocument } from '#core/look/look-document.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { type WorkerPort, workerPort } from '#web/worker/port.ts';
import type { ComposeAsk, ComposeReply } from './compose-messages.ts';

export interface Choice {
  readonly look: LookDocument;
  readonly warnings: readonly Problem[];
}

export interface Composer {
  readonly choices: readonly Choice[];
  readonly problems: readonly Problem[];
  readonly failed: string | null;
  readonly working: boolean;
  readonly ask: (ask: Omit<ComposeAsk, 'ask'>) => void;
  readonly clear: () => void;
}

interface State {
  readonly choices: readonly Choice[];
  readonly problems: readonly Problem[];
  readonly failed: string | null;
  readonly left: number;
}

const NOTHING: State = { choices: [], problems: [], failed: null, left: 0 };

const port = () =>
  workerPort<ComposeAsk, ComposeReply>(
    () => new Worker(new URL('./compose-worker.ts', import.meta.url), { type: 'module' }),
    'The look could not be composed.',
  );

export function useComposer(): Composer {
  const [state, setState] = useState<State>(NOTHING);
  const worker = useRef<WorkerPort<ComposeAsk, ComposeReply> | null>(null);
  const number = useRef(0);
  useEffect(
    () => () => {
      worker.current?.close();
      worker.current = null;
    },
    [],
  );
  const open = (): WorkerPort<ComposeAsk, ComposeReply> => {
    if (worker.current !== null) return worker.current;
    const made = port();
    made.onReply((reply) => {
      if (reply.ask !== number.current) return;
      setState((was) =>
        'problems' in reply
          ? { ...was, problems: was.problems.length > 0 ? was.problems : reply.problems, left: 0 }
          : {
              ...was,
              choices: [...was.choices, { look: reply.look, warnings: reply.warnings }],
              left: was.left - 1,
            },
      );
    });
    made.onCrash((failed) => setState((was) => ({ ...was, failed, left: 0 })));
    worker.current = made;
    return made;
  };
  return {
    choices: state.choices,
    problems: state.problems,
    failed: state.failed,
    working: state.left > 0,
    ask: (ask) => {
      number.current++;
      setState({ ...NOTHING, left: ask.looks.length });
      open().postMessage({ ...ask, ask: number.current });
    },
    clear: () => {
      number.current++;
      setState(NOTHING);
    },
  };
}
