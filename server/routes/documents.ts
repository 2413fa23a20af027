import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Router } from 'express';
import { jobJsonSchema } from '../../src/index.ts';
import { onlyMethods } from '../problem.ts';
import { reply } from '../reply.ts';

/** What does not change while the program runs: that it runs, what a job may hold, and a job to look at. */
export function documentRoutes(root: string, version: string): Router {
  const router = Router();
  const schema = jobJsonSchema();
  router
    .route('/health')
    .get((_req, res) => reply(res, 200, { ok: true, version }))
    .all(onlyMethods('GET'));
  router
    .route('/schema')
    .get((_req, res) => reply(res, 200, schema))
    .all(onlyMethods('GET'));
  router
    .route('/demo')
    .get(async (_req, res) => {
      const text = await readFile(join(root, 'fixtures/jobs/school-furniture.json'), 'utf8');
      reply(res, 200, JSON.parse(text));
    })
    .all(onlyMethods('GET'));
  return router;
}
