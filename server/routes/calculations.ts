import { Router } from 'express';
import type { Request } from 'express';
import { checkCurveRequest, checkJob } from '../../src/index.ts';
import type { Result } from '../../src/index.ts';
import type { Calculator } from '../calculate/calculator.ts';
import { jsonBytes, jsonOf } from '../json-body.ts';
import { Refusal, onlyMethods, refusalOf } from '../problem.ts';
import { replyText } from '../reply.ts';
import { TookTooLong } from '../side-process.ts';

const TOO_MUCH = 'This job takes too long to work out; try fewer gate plans or blowers at a time.';

/** The body as `check` understands it. @throws Refusal */
function understood<T>(req: Request, check: (raw: unknown) => Result<T>): T {
  const result = check(jsonOf(req));
  if (!result.ok) throw refusalOf(result.issues);
  return result.value;
}

const inTime = (answer: Promise<string>): Promise<string> =>
  answer.catch((error: unknown) => {
    throw error instanceof TookTooLong ? new Refusal(422, TOO_MUCH) : error;
  });

/** `/api/assess` and `/api/curve`: check, work out, reply. */
export function calculationRoutes(calculator: Calculator): Router {
  const router = Router();
  router
    .route('/assess')
    .post(jsonBytes, async (req, res) =>
      replyText(res, 200, await inTime(calculator.assess(understood(req, checkJob)))),
    )
    .all(onlyMethods('POST'));
  router
    .route('/curve')
    .post(jsonBytes, async (req, res) =>
      replyText(res, 200, await inTime(calculator.curve(understood(req, checkCurveRequest)))),
    )
    .all(onlyMethods('POST'));
  return router;
}
