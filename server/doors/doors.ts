import type { Request, RequestHandler } from 'express';
import { Refusal } from '../problem.ts';
import { hostAndPort, isLoopbackName } from './hosts.ts';

export type DoorRules = {
  /** names and addresses beside the loopback ones under which this server may be called, as they stand in a URL */
  alsoCalled: () => readonly string[];
};

const isOurs = (authority: string, port: number | undefined, rules: DoorRules): boolean => {
  const host = hostAndPort(authority);
  return (
    host !== undefined && host.port === port && (isLoopbackName(host.name) || rules.alsoCalled().includes(host.name))
  );
};

/** A link somewhere else may open the page; it may not make a call. */
const opensThePage = (req: Request): boolean =>
  (req.method === 'GET' || req.method === 'HEAD') &&
  req.get('sec-fetch-mode') === 'navigate' &&
  !/^\/api(\/|$)/i.test(req.path);

/**
 * Lets in only calls meant for this server: by a name of this machine with the right port (a foreign name that
 * resolves to it is DNS rebinding), and, where a browser says who is asking, by this server's own page.
 * Rules: Fetch standard (Origin), Fetch Metadata (Sec-Fetch-Site).
 */
export const doors =
  (rules: DoorRules): RequestHandler =>
  (req, _res, next) => {
    const port = req.socket.localPort;
    const host = req.get('host') ?? '';
    if (!isOurs(host, port, rules)) {
      throw new Refusal(403, 'This server answers only to its own address; open the one that it printed at the start.');
    }
    const origin = req.get('origin');
    if (
      origin !== undefined &&
      !(origin.startsWith('http://') && isOurs(origin.slice('http://'.length), port, rules))
    ) {
      throw new Refusal(403, 'Calls from pages of another address are not accepted.');
    }
    const site = req.get('sec-fetch-site') ?? 'none';
    if (site !== 'same-origin' && site !== 'none' && !opensThePage(req)) {
      throw new Refusal(403, 'Calls from pages of another address are not accepted.');
    }
    next();
  };
