import { Router } from 'express';

const html = (sentence: string) => `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Blower Bench</title>
<body style="font: 18px/1.5 sans-serif; max-width: 36em; margin: 3em auto; padding: 0 1em">
<h1>Blower Bench runs</h1>
<p>${sentence}</p>
<p>Post a job to <code>/api/assess</code>; <a href="/api/demo">/api/demo</a> is one, <a href="/api/schema">/api/schema</a> says what a job may hold.</p>
`;

/** What stands at the front door while there is no built page: the program runs, and how to call it. */
export function plainPage(sentence: string): Router {
  const router = Router();
  router.get('/', (_req, res) => void res.type('html').send(html(sentence)));
  return router;
}
