import { join, sep } from 'node:path';
import express, { Router } from 'express';
import type { Response } from 'express';

/** Built files carry their content in their name and never change; the page itself is asked for anew each time. */
function cacheBy(res: Response, file: string): void {
  const isNamedByContent = file.includes(`${sep}assets${sep}`);
  res.set('Cache-Control', isNamedByContent ? 'public, max-age=31536000, immutable' : 'no-cache');
}

/** The built page out of `folder`; an address that names no file opens the page as well. */
export function staticPage(folder: string): Router {
  const router = Router();
  router.use(express.static(folder, { index: 'index.html', redirect: false, setHeaders: cacheBy }));
  router.get(/^\/[^./%]+$/, (_req, res) =>
    res.sendFile(join(folder, 'index.html'), { headers: { 'Cache-Control': 'no-cache' } }),
  );
  return router;
}
