/** The server as a process of its own that can be killed and started again on the same port and data. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

const START_LIMIT_ms = 20_000;

export class ServerProcess {
  readonly address: string;
  readonly #args: readonly string[];
  readonly #environment: NodeJS.ProcessEnv;
  #child: ChildProcess | null = null;

  /** @param more options of the server. */
  constructor(port: number, data: string, databaseUrl: string | undefined, more: readonly string[] = []) {
    this.address = `http://127.0.0.1:${port}`;
    this.#args = [
      join(import.meta.dirname, '..', 'server', 'main.ts'),
      ...['--port', String(port), '--data', data, ...more],
    ];
    const { DATABASE_URL: _, ...environment } = process.env;
    this.#environment = {
      ...environment,
      ...(databaseUrl === undefined ? {} : { DATABASE_URL: databaseUrl }),
    };
  }

  /** Resolves, with all it has said, when it says that it is ready. */
  async start(): Promise<string> {
    const child = spawn(process.execPath, this.#args, {
      env: this.#environment,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#child = child;
    let said = '';
    return await new Promise<string>((resolve, reject) => {
      const fail = (why: string) => {
        clearTimeout(timer);
        reject(new Error(`the server ${why}: ${said.slice(-2000)}`));
      };
      const timer = setTimeout(() => fail('did not start in time'), START_LIMIT_ms);
      const hear = (text: string) => {
        said = (said + text).slice(-4000);
        if (!said.includes('is ready at')) return;
        clearTimeout(timer);
        resolve(said);
      };
      child.stdout.setEncoding('utf8').on('data', hear);
      child.stderr.setEncoding('utf8').on('data', hear);
      child.once('exit', () => fail('ended before it was ready'));
    });
  }

  /** SIGKILL, and waits until it is gone. Harmless when it is not running. */
  async kill(): Promise<void> {
    await this.#end('SIGKILL');
  }

  /** Asks it to end, waits, and answers with its exit code. */
  async terminate(): Promise<number | null> {
    return await this.#end('SIGTERM');
  }

  async #end(signal: NodeJS.Signals): Promise<number | null> {
    const child = this.#child;
    if (child === null) return null;
    if (child.exitCode === null && child.signalCode === null) {
      const gone = once(child, 'exit');
      child.kill(signal);
      await gone;
    }
    this.#child = null;
    return child.exitCode;
  }
}
