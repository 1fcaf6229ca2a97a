/** Clients that save as fast as they can and remember what they were promised. */
import { isDeepStrictEqual } from 'node:util';
import { emptyJob, type JobDocument } from '#core/job/document.ts';

/** A save that the server answered with "saved". */
export interface Acknowledged {
  readonly job: string;
  readonly version: number;
  readonly saveId: string;
  readonly document: JobDocument;
}

interface Save {
  readonly saveId: string;
  readonly baseVersion: number;
  readonly document: JobDocument;
}

/** Thrown while the server is down. */
class Down extends Error {
  override readonly name = 'Down';
}

export class Client {
  readonly job: string;
  readonly #address: string;
  readonly #name: string;
  readonly #acknowledged: Acknowledged[];
  #version = 0;
  #count = 0;
  /** Sent, and the server went down before it answered: whether it was stored is not known, so it is sent again. */
  #inTheAir: Save | null = null;

  /** @param acknowledged every save acknowledged is added here. */
  constructor(address: string, name: string, job: string, acknowledged: Acknowledged[]) {
    this.#address = address;
    this.#name = name;
    this.job = job;
    this.#acknowledged = acknowledged;
  }

  /** Saves one version after the other until the server is gone. */
  async saveUntilDown(): Promise<void> {
    try {
      for (;;) await this.#saveNext();
    } catch (error) {
      if (!(error instanceof Down)) throw error;
    }
  }

  /** Sends again what was in the air. */
  async finish(): Promise<void> {
    if (this.#inTheAir !== null) await this.#saveNext();
  }

  async #saveNext(): Promise<void> {
    if (this.#inTheAir === null) {
      this.#count += 1;
      const title = `${this.#name}, save ${this.#count}`;
      this.#inTheAir = {
        saveId: crypto.randomUUID(),
        baseVersion: this.#version,
        // Some pages long, so that a save takes more than one disk block.
        document: { ...emptyJob(title), record: `${title} ${'.'.repeat(3000)}` },
      };
    }
    const save = this.#inTheAir;
    const { status, body } = await this.#send(save);
    this.#inTheAir = null;
    if (status === 200 || status === 201) {
      const { version } = body as { version: number };
      this.#version = version;
      this.#acknowledged.push({ job: this.job, version, saveId: save.saveId, document: save.document });
    } else if (status === 409)
      this.#version = (body as { conflict: { current: { version: number } } }).conflict.current.version;
    else throw new Error(`a save was answered with ${status}: ${JSON.stringify(body).slice(0, 500)}`);
  }

  async #send({ saveId, baseVersion, document }: Save): Promise<{ status: number; body: unknown }> {
    return baseVersion === 0
      ? await call(this.#address, 'POST', '/api/jobs', { id: this.job, saveId, document })
      : await call(this.#address, 'PUT', `/api/jobs/${this.job}`, { baseVersion, saveId, document });
  }
}

/** Compares what the server has with what it acknowledged. */
export async function findLost(
  address: string,
  jobs: ReadonlySet<string>,
  acknowledged: readonly Acknowledged[],
): Promise<{ lost: readonly string[]; gaps: readonly string[] }> {
  const lost: string[] = [];
  const gaps: string[] = [];
  for (const job of jobs) {
    const saves = acknowledged.filter((save) => save.job === job);
    const list = await call(address, 'GET', `/api/jobs/${job}/versions`);
    const { versions = [] } = list.body as { versions?: { version: number; saveId: string }[] };
    if (versions.some(({ version }, i) => version !== i + 1))
      gaps.push(`GAP: job ${job} has versions ${versions.map((v) => v.version).join(', ')}`);
    // Nothing is in the air any more, so a version that nobody was promised is a save stored twice.
    if (versions.length > saves.length)
      gaps.push(`TWICE: job ${job} has ${versions.length} versions, ${saves.length} were acknowledged`);
    for (const save of saves) {
      const { body } = await call(address, 'GET', `/api/jobs/${job}/versions/${save.version}`);
      const stored = (body as { document?: unknown }).document;
      if (versions[save.version - 1]?.saveId !== save.saveId || !isDeepStrictEqual(stored, save.document))
        lost.push(`LOST: job ${job} version ${save.version}, "${save.document.title}"`);
    }
  }
  return { lost, gaps };
}

async function call(
  address: string,
  method: string,
  path: string,
  body?: unknown,
): Promise<{ status: number; body: unknown }> {
  const json = body === undefined ? {} : { body: JSON.stringify(body) };
  try {
    const response = await fetch(address + path, {
      method,
      headers: { 'content-type': 'application/json' },
      ...json,
    });
    return { status: response.status, body: await response.json() };
  } catch {
    // No connection, or it broke in the middle of the answer.
    throw new Down('the server does not answer');
  }
}
