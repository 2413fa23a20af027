import express from 'express';
import type { Request, RequestHandler } from 'express';
import { Refusal } from './problem.ts';

/** Bodies up to 8 MB are accepted. */
const LARGEST_BODY_bytes = 8 * 1024 * 1024;
/** A job is nested some ten deep. */
const MOST_NESTED = 100;
/** Finding the place of a mistake parses the text some twenty times; beyond this size it is not worth it. */
const LARGEST_SEARCHED = 1024 * 1024;

const isEmpty = (req: Request) =>
  Number(req.get('content-length') ?? 0) === 0 && req.get('transfer-encoding') === undefined;
const isJson = (req: Request) => Boolean(req.is(['application/json', 'application/*+json']));

/** Reads the bytes of a JSON body; what they say is understood by `jsonOf`. */
export const jsonBytes: RequestHandler = express.raw({
  type: (req) => isJson(req as Request),
  limit: LARGEST_BODY_bytes,
});

function errorOf(text: string): string | undefined {
  try {
    JSON.parse(text);
    return undefined;
  } catch (error) {
    return (error as Error).message;
  }
}

/** True when a beginning of a text could still become JSON: the parser's only complaint is that it ends. */
function mayGoOn(beginning: string): boolean {
  const error = errorOf(beginning);
  if (error === undefined) return true;
  const position = /at position (\d+)/.exec(error)?.[1];
  return position === undefined ? /end of JSON/.test(error) : Number(position) >= beginning.length;
}

/** Index of the first character at which `text` stops being JSON, by halving; its length when it merely ends too early. */
export function mistakeIn(text: string): number {
  let good = 0;
  let bad = text.length + 1;
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (mayGoOn(text.slice(0, middle))) good = middle;
    else bad = middle;
  }
  return good;
}

function placeOfMistake(text: string): string {
  if (text.length > LARGEST_SEARCHED) return '';
  const index = mistakeIn(text);
  if (index >= text.length) return ' It ends too early.';
  const before = text.slice(0, index).split('\n');
  const column = (before.at(-1)?.length ?? 0) + 1;
  return ` The mistake is at line ${before.length}, column ${column}: ${JSON.stringify(text.slice(index, index + 12))}.`;
}

/** True when brackets are open more than `MOST_NESTED` deep anywhere: parsing that takes seconds and no job needs it. */
function isNestedTooDeep(bytes: Buffer): boolean {
  const [quote, backslash, open, close, openBrace, closeBrace] = [0x22, 0x5c, 0x5b, 0x5d, 0x7b, 0x7d];
  let depth = 0;
  let isInText = false;
  for (let index = 0; index < bytes.length; index++) {
    const byte = bytes[index];
    if (isInText) {
      if (byte === backslash) index++;
      else if (byte === quote) isInText = false;
    } else if (byte === quote) isInText = true;
    else if (byte === open || byte === openBrace) depth++;
    else if (byte === close || byte === closeBrace) depth--;
    if (depth > MOST_NESTED) return true;
  }
  return false;
}

function decoded(bytes: Buffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(400, 'The body is not text in UTF-8.');
  }
}

/**
 * The parsed JSON body of a call.
 * @throws Refusal 415 for another content type or character set, 400 for no body or no JSON, with the place of the mistake
 */
export function jsonOf(req: Request): unknown {
  if (!Buffer.isBuffer(req.body)) {
    if (req.get('content-type') !== undefined || !isEmpty(req)) {
      throw new Refusal(415, 'Send JSON, with the header Content-Type: application/json.');
    }
    throw new Refusal(400, 'The call has no body; send a JSON document ({} where there is nothing to say).');
  }
  const charset = /charset="?([^";\s]+)/i.exec(req.get('content-type') ?? '')?.[1]?.toLowerCase() ?? 'utf-8';
  if (charset !== 'utf-8' && charset !== 'utf8') throw new Refusal(415, `Send the text in UTF-8, not ${charset}.`);
  if (isNestedTooDeep(req.body)) throw new Refusal(400, `The document is nested more than ${MOST_NESTED} deep.`);
  const text = decoded(req.body);
  if (text.trim() === '') throw new Refusal(400, 'The body is empty; send a JSON document.');
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(400, `This is not JSON.${placeOfMistake(text)}`);
  }
}
