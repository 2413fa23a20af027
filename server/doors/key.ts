import { timingSafeEqual, createHash } from 'node:crypto';
import type { Request, RequestHandler } from 'express';
import { Refusal } from '../problem.ts';
import { isLoopbackAddress } from './hosts.ts';

const COOKIE = 'blower_bench_key';

const digest = (text: string) => createHash('sha256').update(text).digest();
const isSame = (given: string, key: string) => timingSafeEqual(digest(given), digest(key));

function cookieOf(req: Request): string | undefined {
  const pairs = (req.get('cookie') ?? '').split(';').map((pair) => pair.trim().split('='));
  return pairs.find(([name]) => name === COOKIE)?.[1];
}

/**
 * Calls from other machines need the key: once in the address that was printed, from then on in a cookie that only
 * this page gets. Calls from this machine need none.
 * @param isHere  whether an address, as a socket reports it, is this machine's
 */
export const keyDoor =
  (key: string, isHere: (address: string | undefined) => boolean = isLoopbackAddress): RequestHandler =>
  (req, res, next) => {
    if (isHere(req.socket.remoteAddress) || isSame(cookieOf(req) ?? '', key)) {
      next();
      return;
    }
    const given = req.query['key'];
    if (req.method !== 'GET' || typeof given !== 'string' || !isSame(given, key)) {
      throw new Refusal(
        401,
        'From another machine, open the whole address with the key that was printed at the start.',
      );
    }
    res.cookie(COOKIE, key, { httpOnly: true, sameSite: 'strict', maxAge: 365 * 24 * 3600 * 1000 });
    res.redirect(303, req.path);
  };
