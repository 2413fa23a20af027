import type { Response } from 'express';
import { toJson } from './to-json.ts';

/** Answers with a JSON text; what is asked for again may have changed, so nothing is cached. */
export function replyText(res: Response, status: number, text: string): void {
  res.status(status).set('Cache-Control', 'no-store').type('application/json').send(text);
}

/** Answers with a value as JSON. @throws RangeError where it holds a NaN or an infinity */
export const reply = (res: Response, status: number, value: unknown): void => replyText(res, status, toJson(value));
