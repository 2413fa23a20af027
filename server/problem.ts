import { randomUUID } from 'node:crypto';
import { STATUS_CODES } from 'node:http';
import type { ErrorRequestHandler, Request, RequestHandler, Response } from 'express';
import type { Issue } from '../src/index.ts';

export type ProblemError = { path: string; message: string };
export type Log = (line: string) => void;

/** A call that is turned down, with the words for whoever made it. Thrown by doors and routes, answered here. */
export class Refusal extends Error {
  readonly status: number;
  readonly errors: ProblemError[];
  readonly headers: Record<string, string>;

  constructor(status: number, detail: string, errors: ProblemError[] = [], headers: Record<string, string> = {}) {
    super(detail);
    this.status = status;
    this.errors = errors;
    this.headers = headers;
  }
}

/** A document that is not understood (400) or understood but impossible (422); with both, the first wins. */
export function refusalOf(issues: readonly Issue[]): Refusal {
  const isUnclear = issues.some(({ code }) => code === 'not-understood');
  const [first] = issues;
  const detail =
    issues.length === 1 && first
      ? first.message
      : `${issues.length} things stand in the way; the first: ${first?.message}`;
  return new Refusal(
    isUnclear ? 400 : 422,
    detail,
    issues.map(({ path, message }) => ({ path, message })),
  );
}

const onePhoto = () =>
  new Refusal(400, 'Send one photo, in the field called photo.', [
    { path: '/photo', message: 'One file, in this field.' },
  ]);

/** What the libraries at the door throw, in our words. */
const REFUSED_BY_LIBRARY: Record<string, (error: Error) => Refusal> = {
  'entity.too.large': () => new Refusal(413, 'The document is larger than 8 MB.'),
  'encoding.unsupported': () =>
    new Refusal(415, 'This content encoding is not understood; send it plain, or with gzip, deflate or br.'),
  'request.aborted': () => new Refusal(400, 'The call ended before all of it had come.'),
  'request.size.invalid': () => new Refusal(400, 'The call is not as long as it says.'),
  LIMIT_FILE_SIZE: () => new Refusal(413, 'The photo is larger than 40 MB; send a smaller one.'),
  LIMIT_UNEXPECTED_FILE: onePhoto,
  LIMIT_FILE_COUNT: onePhoto,
};

function refusalFrom(error: unknown): Refusal | undefined {
  if (error instanceof Refusal) return error;
  if (!(error instanceof Error)) return undefined;
  const { type, code, status } = error as { type?: string; code?: string; status?: number };
  const known = REFUSED_BY_LIBRARY[type ?? ''] ?? REFUSED_BY_LIBRARY[code ?? ''];
  if (known) return known(error);
  if (error.name === 'MulterError') return new Refusal(400, `The upload is not understood: ${error.message}.`);
  if (error instanceof URIError)
    return new Refusal(400, 'The address holds a % that is not followed by two hexadecimal digits.');
  // what body-parser and http-errors call a client's mistake stays one
  if (status !== undefined && status >= 400 && status < 500) return new Refusal(status, error.message);
  return undefined;
}

/** A refusal as a problem document (RFC 9457). */
export const problemOf = ({ status, message: detail, errors }: Refusal) => ({
  type: 'about:blank',
  title: STATUS_CODES[status] ?? 'Error',
  status,
  detail,
  errors,
});

/** One JSON document a line; the last one may be a problem: the status was sent long before. */
export const LINES = 'application/x-ndjson';
const isInLines = (res: Response): boolean => String(res.getHeader('Content-Type')).startsWith(LINES);

function send(res: Response, refusal: Refusal): void {
  res.status(refusal.status).set(refusal.headers).set('Cache-Control', 'no-store');
  res.type('application/problem+json').send(JSON.stringify(problemOf(refusal)));
}

/** The one maker of problem+json: known refusals in their own words, anything else as 500 with an id that the log explains. */
export function problems(log: Log): ErrorRequestHandler {
  const unexpected = (error: unknown, req: Request): Refusal => {
    const id = randomUUID();
    log(`${id} ${req.method} ${req.path}: ${error instanceof Error ? error.stack : String(error)}`);
    return new Refusal(500, `Something went wrong in the program, not in what you sent. The log has it under ${id}.`);
  };
  return (error, req, res, next) => {
    if (res.headersSent && !isInLines(res)) {
      next(error);
      return;
    }
    const refusal = refusalFrom(error) ?? unexpected(error, req);
    if (res.headersSent) res.end(`${JSON.stringify({ problem: problemOf(refusal) })}\n`);
    else send(res, refusal);
  };
}

/** Nothing stands at this address. */
export const nothingHere: RequestHandler = (req) => {
  throw new Refusal(404, `There is nothing at ${req.method} ${req.baseUrl}${req.path}.`);
};

/** The address is right, the method is not. */
export const onlyMethods =
  (...allowed: string[]): RequestHandler =>
  (req) => {
    const list = allowed.join(', ');
    throw new Refusal(405, `${req.method} is not possible here; use ${list}.`, [], { Allow: list });
  };
