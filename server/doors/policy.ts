import helmet from 'helmet';
import type { RequestHandler } from 'express';

/**
 * Headers of every answer: nothing from outside, no frames, no sniffing. No upgrade to https and no transport
 * security: a phone on the workshop's network speaks plain http to this machine.
 * Styles may be inline because the plot library writes its own style element.
 * While developing, the page's live reload needs inline scripts and a socket.
 */
export const policy = ({ isDevelopment }: { isDevelopment: boolean }): RequestHandler =>
  helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", ...(isDevelopment ? ["'unsafe-inline'"] : [])],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        fontSrc: ["'self'", 'data:'],
        connectSrc: ["'self'", ...(isDevelopment ? ['ws:'] : [])],
        workerSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    strictTransportSecurity: false,
    xFrameOptions: { action: 'deny' },
    referrerPolicy: { policy: 'no-referrer' },
  });
