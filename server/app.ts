import express from 'express';
import type { Express, RequestHandler } from 'express';
import { doors } from './doors/doors.ts';
import type { DoorRules } from './doors/doors.ts';
import { keyDoor } from './doors/key.ts';
import { policy } from './doors/policy.ts';
import { nothingHere, problems } from './problem.ts';
import type { Log } from './problem.ts';
import type { Calculator } from './calculate/calculator.ts';
import { calculationRoutes } from './routes/calculations.ts';
import { documentRoutes } from './routes/documents.ts';
import { jobRoutes } from './routes/jobs.ts';
import { photoReadingRoutes } from './routes/photo-readings.ts';
import { photoRoutes } from './routes/photos.ts';
import type { PhotoReadingParts } from './routes/photo-readings.ts';
import type { JobStore } from './store/jobs.ts';

export type AppParts = PhotoReadingParts & {
  /** the project's folder */
  root: string;
  version: string;
  jobs: JobStore;
  calculator: Calculator;
  page: RequestHandler;
  doorRules: DoorRules;
  /** needed by calls from other machines; null when only this machine is served */
  key: string | null;
  isDevelopment: boolean;
  log: Log;
};

/** The whole server short of a socket: doors first, then the calls, then the page, then the one place for errors. */
export function createApp(parts: AppParts): Express {
  const app = express();
  app.disable('x-powered-by');
  app.set('etag', false);
  app.set('query parser', 'simple');
  app.use(policy(parts));
  app.use(doors(parts.doorRules));
  if (parts.key !== null) app.use(keyDoor(parts.key));
  app.use('/api', documentRoutes(parts.root, parts.version));
  app.use('/api', calculationRoutes(parts.calculator));
  app.use('/api/jobs', jobRoutes(parts.jobs));
  app.use('/api/photos', photoRoutes(parts), photoReadingRoutes(parts));
  app.use('/api', nothingHere);
  app.use(parts.page);
  app.use(nothingHere);
  app.use(problems(parts.log));
  return app;
}
