/** The tables as the newest migration leaves them, for Kysely. Times are ISO 8601 texts, documents JSON texts, in both databases. */
export interface Tables {
  applied_migrations: { number: number; name: string; applied_at: string };
  /** One row a job; what lists show is copied out of the newest document on every save. */
  jobs: {
    id: string;
    version: number;
    title: string;
    customer_name: string;
    stage: string;
    hand_over: string;
    first_pour_at: string;
    updated_at: string;
    archived_at: string | null;
  };
  /** Append-only: every document ever saved. */
  job_versions: { job_id: string; version: number; save_id: string; saved_at: string; document: string };
  /** One row a resin card of the shop. */
  resins: { id: string; version: number; name: string; updated_at: string; archived_at: string | null };
  /** Append-only: every card document ever saved. */
  resin_versions: { resin_id: string; version: number; save_id: string; saved_at: string; document: string };
  /** Append-only: the shop is the row with the highest version. */
  shop: {
    version: number;
    save_id: string;
    saved_at: string;
    name: string;
    system: string;
    currency: string;
    rates: string;
    body: string;
    /** IANA name; '': not chosen. */
    time_zone: string;
    /** JSON. */
    spreads: string;
  };
  /** Append-only: what was put on the shelf and taken from it, numbered from 1. */
  offcut_movements: { number: number; id: string; moved_at: string; movement: string };
  /** A pour as it was opened: what it was planned from, frozen; `last_event` is the number of its newest event. */
  runs: {
    id: string;
    job_id: string;
    coat_id: string;
    title: string;
    opened_at: string;
    last_event: number;
    pour: string;
  };
  /** Append-only: what happened in a pour, numbered from 1 in the order it came in; `happened_at` by the server's clock. */
  run_events: { run_id: string; number: number; event_id: string; happened_at: string; event: string };
}
