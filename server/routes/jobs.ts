import { Router } from 'express';
import type { Request, Response } from 'express';
import { checkJob } from '../../src/index.ts';
import { jsonBytes, jsonOf } from '../json-body.ts';
import { Refusal, onlyMethods, refusalOf } from '../problem.ts';
import { reply } from '../reply.ts';
import { isJobId } from '../store/jobs.ts';
import type { Condition, JobStore } from '../store/jobs.ts';

type JobRequest = Request<{ jobId: string }>;

const conditionOf = (req: JobRequest): Condition => ({
  ifMatch: req.get('if-match') ?? null,
  ifNoneMatch: req.get('if-none-match') ?? null,
});

const noSuchJob = (id: string) => new Refusal(404, `There is no job called ${id.slice(0, 64)}.`);

const changedSince = (etag: string | null) =>
  etag === null
    ? new Refusal(412, 'There is no such job any more; save it without If-Match to make it again.')
    : new Refusal(412, 'The job has been changed since you read it; read it again, then save.', [], { ETag: etag });

function knownId(req: JobRequest): string {
  if (!isJobId(req.params.jobId)) throw noSuchJob(req.params.jobId);
  return req.params.jobId;
}

function newId(req: JobRequest): string {
  if (isJobId(req.params.jobId)) return req.params.jobId;
  throw new Refusal(400, 'The id of a job has 1 to 64 letters, digits, - or _, nothing else.');
}

async function read(store: JobStore, req: JobRequest, res: Response): Promise<void> {
  const id = knownId(req);
  const job = await store.read(id);
  if (!job) throw noSuchJob(id);
  res.set('ETag', job.etag).set('Cache-Control', 'no-cache').type('application/json').send(job.bytes);
}

async function write(store: JobStore, req: JobRequest, res: Response): Promise<void> {
  const id = newId(req);
  const job = jsonOf(req);
  const checked = checkJob(job);
  if (!checked.ok) throw refusalOf(checked.issues);
  const written = await store.write(id, job, conditionOf(req));
  if (written.outcome === 'changed') throw changedSince(written.etag);
  res.set('ETag', written.etag).location(`/api/jobs/${id}`);
  reply(res, written.outcome === 'created' ? 201 : 200, { id, name: checked.value.name, etag: written.etag });
}

async function remove(store: JobStore, req: JobRequest, res: Response): Promise<void> {
  const id = knownId(req);
  const outcome = await store.remove(id, conditionOf(req));
  if (outcome === 'missing') throw noSuchJob(id);
  if (outcome === 'changed') throw changedSince((await store.read(id))?.etag ?? null);
  res.status(204).end();
}

/** `/api/jobs`: the stored jobs; a PUT is on disk, whole, before it is answered. */
export function jobRoutes(store: JobStore): Router {
  const router = Router();
  router
    .route('/')
    .get(async (_req, res) => reply(res, 200, await store.list()))
    .all(onlyMethods('GET'));
  router
    .route('/:jobId')
    .get((req, res) => read(store, req, res))
    .put(jsonBytes, (req, res) => write(store, req, res))
    .delete((req, res) => remove(store, req, res))
    .all(onlyMethods('GET', 'PUT', 'DELETE'));
  return router;
}
