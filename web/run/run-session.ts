/**
 * One pour under way on this page: its events, its clock, its windows. Everything a person does is kept on the device before anything else
 * happens with it; the screen only reads `view()`.
 */

import { foldRun, type RunState } from '#core/pour/run/fold-run.ts';
import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import type { FrozenPour } from '#core/pour/run/frozen-pour.ts';
import {
  type ClockDoubt,
  type ClockSample,
  type ClockState,
  correctClock,
  startClock,
  tickClock,
} from '#core/pour/run/run-clock.ts';
import { joinEvents, type RunEvent } from '#core/pour/run/run-event.ts';
import { AnswerError } from '#web/api/http.ts';
import type { ClockKeep } from './clock-keep.ts';
import type { EventLog } from './event-log.ts';
import { type ExchangeAnswer, type Exchanger, exchangeAll } from './exchange.ts';
import { elapsedByEvents, elapsedByServer } from './joined-clock.ts';
import { asKnown } from './known-done.ts';
import type { RunEngine } from './run-engine.ts';

type Without<E> = E extends RunEvent ? Omit<E, 'id' | 'run' | 'device' | 'wall_ms' | 'at_s'> : never;
/** What a person did; the rest is put on here. */
export type RunDeed = Without<RunEvent>;

export type Carried =
  /** All of it is with the server. */
  | 'shared'
  /** Something made here is on its way. */
  | 'sending'
  /** The server does not answer; kept here, sent later. */
  | 'offline'
  /** It answers, and does not take it; kept here. */
  | 'refused';

export interface RunView {
  readonly state: RunState;
  readonly events: readonly RunEvent[];
  /** Whole seconds on the run's clock; null before the start. */
  readonly now_s: number | null;
  readonly doubt: ClockDoubt | null;
  readonly forecast: RunForecast | null;
  /** Why there are no windows, in words; null: there are, or will be. */
  readonly failed: string | null;
  readonly carried: Carried;
  /** False: this device could not keep the last event. */
  readonly kept: boolean;
}

/** What pages of one browser tell each other. */
export type PageNews =
  | { readonly kind: 'event'; readonly event: RunEvent }
  | { readonly kind: 'clock'; readonly state: ClockState };

export interface PageLine {
  tell(news: PageNews): void;
  close(): void;
}

export interface RunMeans {
  readonly log: EventLog;
  readonly keep: ClockKeep;
  readonly engine: RunEngine;
  readonly server: Exchanger;
  /** Hands the server the frozen pour, where it does not have it yet. */
  readonly offer: () => Promise<void>;
  /** Opens the line to the other pages. */
  readonly line: (hear: (news: PageNews) => void) => PageLine;
  readonly sample: () => ClockSample;
  readonly newId: () => string;
  readonly device: string;
}

/** Windows are computed anew this often, and after every event. */
const FORECAST_EVERY_s = 10;
const KEEP_CLOCK_EVERY_s = 3;
const EXCHANGE_EVERY_s = 4;
const EXCHANGE_AT_MOST_s = 60;
const LONGEST_s = 864_000;

export class RunSession {
  readonly run: string;
  readonly pour: FrozenPour;
  readonly #means: RunMeans;
  readonly #listeners = new Set<() => void>();
  readonly #line: PageLine;
  #clock: ClockState | null;
  #view: RunView;
  #asked_s = Number.NEGATIVE_INFINITY;
  #keptClock_s = Number.NEGATIVE_INFINITY;
  #exchangeAt_ms = 0;
  #pause_s = EXCHANGE_EVERY_s;
  #exchanging = false;
  #again = false;
  #offered = false;
  #closed = false;

  private constructor(run: string, pour: FrozenPour, events: readonly RunEvent[], means: RunMeans) {
    this.run = run;
    this.pour = pour;
    this.#means = means;
    this.#clock = means.keep.read(run);
    this.#view = {
      state: foldRun(pour.plan.steps, events),
      events: joinEvents(events),
      now_s: null,
      doubt: null,
      forecast: null,
      failed: null,
      carried: 'sending',
      kept: true,
    };
    this.#line = means.line((news) => this.#hear(news));
    this.#findClock(() => elapsedByEvents(events, means.sample().wall_ms));
    this.tick();
    this.#askForecast();
  }

  /** Takes up what this device has of a run. */
  static async open(run: string, pour: FrozenPour, means: RunMeans): Promise<RunSession> {
    return new RunSession(run, pour, await means.log.events(run), means);
  }

  readonly view = (): RunView => this.#view;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** To be called every 250 to 1000 ms. Answers the run's clock with its fractions, null before the start. */
  tick(): number | null {
    const sample = this.#means.sample();
    const { started_s, finished_s } = this.#view.state;
    if (finished_s !== null) {
      if (this.#view.now_s !== Math.floor(finished_s))
        this.#show({ now_s: Math.floor(finished_s), doubt: null });
    } else if (this.#clock !== null && started_s !== null) {
      const { state, doubt } = tickClock(this.#clock, sample);
      this.#clock = state;
      const now_s = Math.floor(state.elapsed_s);
      if (doubt !== null) this.#show({ doubt, now_s });
      else if (now_s !== this.#view.now_s) this.#show({ now_s });
      if (doubt !== null || Math.abs(state.elapsed_s - this.#keptClock_s) >= KEEP_CLOCK_EVERY_s)
        this.keepClock();
      if (Math.abs(state.elapsed_s - this.#asked_s) >= FORECAST_EVERY_s) this.#askForecast();
    }
    if (sample.mono_ms >= this.#exchangeAt_ms) void this.exchange();
    return this.#clock?.elapsed_s ?? null;
  }

  /** Writes the clock down; also when the page is hidden or closed. */
  keepClock(): void {
    if (this.#clock === null) return;
    this.#keptClock_s = this.#clock.elapsed_s;
    this.#means.keep.write(this.run, this.#clock);
  }

  /** Zero of the clock: the first cup's parts meet. */
  start(): Promise<void> {
    if (this.#view.state.started_s !== null) return Promise.resolve();
    this.#clock = startClock(this.#means.sample());
    return this.did({ kind: 'started' });
  }

  /** Something was done. It is on the screen and on the device at once; resolves when it is written. */
  async did(deed: RunDeed): Promise<void> {
    this.tick();
    const event = {
      id: this.#means.newId(),
      run: this.run,
      device: this.#means.device,
      at_s: this.#now_s(),
      wall_ms: Math.max(0, Math.round(this.#means.sample().wall_ms)),
      ...deed,
    } as RunEvent;
    const away = this.#view.carried === 'offline' || this.#view.carried === 'refused';
    this.#join([event], { carried: away ? this.#view.carried : 'sending' });
    this.tick();
    this.keepClock();
    try {
      await this.#means.log.add(event);
      if (!this.#view.kept) this.#show({ kept: true });
    } catch {
      this.#show({ kept: false });
    }
    this.#line.tell({ kind: 'event', event });
    if (!away) void this.exchange();
  }

  undo(): Promise<void> {
    const last = this.#view.state.undoable;
    return last === null ? Promise.resolve() : this.did({ kind: 'undone', event: last.id });
  }

  /** The maker's answer to a doubt: the time counted stands, or is put right by so much. */
  async settle(by_s: number): Promise<void> {
    this.#show({ doubt: null });
    if (this.#clock === null || by_s === 0) return;
    this.#clock = correctClock(this.#clock, Math.max(by_s, -this.#clock.elapsed_s));
    this.#line.tell({ kind: 'clock', state: this.#clock });
    await this.did({ kind: 'clock corrected', by_s });
    this.#askForecast();
  }

  /** Brings this device and the server to the same events; waits longer after each failure. Never throws. */
  async exchange(): Promise<void> {
    if (this.#exchanging) {
      this.#again = true;
      return;
    }
    this.#exchanging = true;
    this.#again = false;
    let answered = false;
    try {
      if (!this.#offered) {
        await this.#means.offer();
        this.#offered = true;
      }
      const answer = await exchangeAll(this.#means.log, this.#means.server, this.run, () =>
        Math.round(this.#means.sample().wall_ms),
      );
      if (this.#closed) return;
      this.#joinClock(answer);
      this.#pause_s = EXCHANGE_EVERY_s;
      this.#join(
        answer.events.map(({ event }) => event),
        { carried: this.#again ? 'sending' : 'shared' },
      );
      answered = true;
    } catch (error) {
      this.#pause_s = Math.min(EXCHANGE_AT_MOST_s, this.#pause_s * 2);
      if (!this.#closed) this.#show({ carried: error instanceof AnswerError ? 'refused' : 'offline' });
    } finally {
      this.#exchanging = false;
      this.#exchangeAt_ms = this.#means.sample().mono_ms + this.#pause_s * 1000;
      if (this.#again && answered && !this.#closed) void this.exchange();
    }
  }

  /** The network is said to be back: no use waiting out the pause. */
  hurry(): void {
    this.#pause_s = EXCHANGE_EVERY_s;
    void this.exchange();
  }

  close(): void {
    this.#closed = true;
    this.keepClock();
    this.#line.close();
    this.#means.engine.close();
    this.#listeners.clear();
  }

  /** 0 before the start; no pour is followed longer than its events can say. */
  #now_s(): number {
    return Math.min(LONGEST_s, Math.max(0, this.#clock?.elapsed_s ?? 0));
  }

  #joinClock(answer: ExchangeAnswer): void {
    this.#findClock(() => elapsedByServer(answer));
  }

  /** Only a device that has no clock yet takes one from elsewhere: a clock that runs is never moved unasked. */
  #findClock(elapsed: () => number | null): void {
    if (this.#clock !== null) return;
    const elapsed_s = elapsed();
    if (elapsed_s !== null)
      this.#clock = startClock(this.#means.sample(), Math.min(LONGEST_s, Math.max(0, elapsed_s)));
  }

  #hear(news: PageNews): void {
    if (this.#closed) return;
    if (news.kind === 'clock') {
      if (news.state.elapsed_s >= 0) this.#clock = news.state;
      this.tick();
      return;
    }
    // another page of this browser wrote it into the log we share, and keeps the clock there
    this.#clock ??= this.#means.keep.read(this.run);
    // nor is it known here whether that page lived to send it: the next exchange sends what is left
    const waits = this.#view.carried === 'shared';
    this.#join([news.event], waits ? { carried: 'sending' } : {});
    if (this.#exchanging) this.#again = true;
    this.tick();
  }

  #join(events: readonly RunEvent[], more: Partial<RunView> = {}): void {
    const joined = joinEvents(this.#view.events, events);
    const same = joined.length === this.#view.events.length;
    this.#show(same ? more : { ...more, events: joined, state: foldRun(this.pour.plan.steps, joined) });
    if (!same) this.#askForecast();
  }

  #askForecast(): void {
    this.#asked_s = this.#clock?.elapsed_s ?? 0;
    const now_s = this.#view.state.finished_s ?? this.#now_s();
    const { inputs: request, plan } = this.pour;
    this.#means.engine.ask(
      { request, plan, state: this.#view.state, now_s },
      (forecast) => this.#show({ forecast, failed: null }),
      (failed) => this.#show({ failed }),
    );
  }

  #show(part: Partial<RunView>): void {
    if (this.#closed) return;
    const view = { ...this.#view, ...part };
    const { forecast, state } = view;
    this.#view = forecast === null ? view : { ...view, forecast: asKnown(forecast, state) };
    for (const listener of this.#listeners) listener();
  }
}
