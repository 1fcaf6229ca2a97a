/** A request that is refused. Thrown anywhere below the app, answered as `{error: {id, code, message}}`. */
import type { ContentfulStatusCode } from 'hono/utils/http-status';

export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly status: ContentfulStatusCode;
  readonly code: string;

  constructor(status: ContentfulStatusCode, code: string, message: string) {
    super(message);
    this.status = status;
    this.code = code;
  }
}
