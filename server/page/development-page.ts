import type { Server } from 'node:http';
import { join } from 'node:path';
import { Router } from 'express';

/** The page straight from its sources, reloaded as they change; its socket shares the server's port. */
export async function developmentPage(root: string, server: Server): Promise<Router> {
  const { createServer } = await import('vite');
  const vite = await createServer({
    root: join(root, 'web'),
    configFile: join(root, 'web/vite.config.ts'),
    appType: 'spa',
    server: { middlewareMode: true, ws: { server } },
  });
  const router = Router();
  router.use(vite.middlewares);
  return router;
}
