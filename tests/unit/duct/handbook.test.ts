import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { format } from 'prettier';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ductHandbook } from '../../../src/duct/index.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const style = JSON.parse(await readFile(join(root, '.prettierrc.json'), 'utf8')) as object;

test('the page of pieces says what the tables say', async () => {
  const page = await format(ductHandbook(), { ...style, parser: 'markdown' });
  await expect(page).toMatchFileSnapshot(join(root, 'src/duct/PIECES.md'));
});

const RECORD = `'test-cowl': { label: 'cowl of this test', part: 'other', doubtKind: 'exit', coefficient: () => ({ k: 4.2, doubt: 0.3, source: 'this test' }) },`;

/** Run in the copy: what schema, form, page of pieces and assessment make of a fitting by name. */
const ASK = `
import { readFileSync } from 'node:fs';
import { checkJob, jobJsonSchema, judge } from './src/index.ts';
import { ductHandbook } from './src/duct/index.ts';
import { fieldsOf, nameLabel } from './web/ducts/fields.ts';
const answers = ['test-cowl', 'no-such-thing'].map((fitting) => {
  const job = JSON.parse(readFileSync('fixtures/jobs/school-furniture.json', 'utf8'));
  const flow = () => { const checked = checkJob(job); return checked.ok ? judge(checked.value).assessment.cases[0].operatingPoint.flow_m3_s : checked.issues.map(({ message }) => message); };
  const without = flow();
  job.ductwork.discharge.unshift({ kind: 'fitting', fitting, diameter_m: 0.1 });
  const byName = flow();
  job.ductwork.discharge[0].k = 4.2;
  return { without, byName, byCoefficient: flow() };
});
const options = fieldsOf('fitting').find(({ path }) => path === 'fitting').options;
console.log(JSON.stringify({ answers, options, label: nameLabel('fitting', 'test-cowl'), schema: JSON.stringify(jobJsonSchema()), page: ductHandbook() }));
`;

type Flows = { without: number; byName: number | string[]; byCoefficient: number };
type Answer = { answers: [Flows, Flows]; options: string[]; label: string; schema: string; page: string };

describe('a copy of the program with one record more in its table of fittings', () => {
  let folder: string;
  let answer: Answer;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'one-fitting-more-'));
    await mkdir(join(folder, 'web/ducts'), { recursive: true });
    for (const part of ['src', 'web/ducts/fields.ts', 'fixtures/jobs', 'package.json', 'tsconfig.base.json'])
      await cp(join(root, part), join(folder, part), { recursive: true });
    await symlink(join(root, 'node_modules'), join(folder, 'node_modules'));
    const path = join(folder, 'src/duct/tables/fittings.ts');
    const before = await readFile(path, 'utf8');
    const after = before.replace('export const FITTINGS = {', `export const FITTINGS = {\n  ${RECORD}`);
    expect(after).not.toBe(before);
    await writeFile(path, after);
    await writeFile(join(folder, 'ask.ts'), ASK);
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', 'ask.ts'], {
      cwd: folder,
      maxBuffer: 1e8,
    });
    answer = JSON.parse(stdout) as Answer;
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  test('is offered by the form, under its label', () => {
    expect(answer.options).toContain('test-cowl');
    expect(answer.label).toBe('cowl of this test');
  });

  test('stands in the schema and on the page of pieces, with its source', () => {
    expect(answer.schema).toContain('"test-cowl"');
    expect(answer.page).toContain('| `test-cowl` | cowl of this test | 4.2 | 30 % | this test |');
  });

  test('a job with it is assessed as if its coefficient stood there', () => {
    const [known, unknown] = answer.answers;
    expect(known.byName).toBeLessThan(known.without);
    expect(known.byName).toBeCloseTo(known.byCoefficient, 9);
    // the same job with a name that no table has is turned down, and the sentence offers the new one
    expect(unknown.byName).toEqual([expect.stringContaining('test-cowl')]);
    expect(unknown.byCoefficient).toBeCloseTo(known.byCoefficient, 9);
  });
});
