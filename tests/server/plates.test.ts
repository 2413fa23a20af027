import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { form, json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

/** A clean plate and a clean sheet, drawn with the plainest of faces; everything harder is measured by `npm run plates`. */
const [WIDTH, HEIGHT] = [1400, 1000];

const picture = (svg: string) =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" font-family="DejaVu Sans" font-size="44">${svg}</svg>`,
    ),
  )
    .jpeg({ quality: 92 })
    .toBuffer();

const text = (x: number, y: number, words: string) => `<text x="${x}" y="${y}">${words}</text>`;

const plate = () =>
  picture(
    `<rect width="100%" height="100%" fill="#4a6b50"/><rect x="160" y="180" width="1080" height="640" rx="16" fill="#dcdcd8" stroke="#555" stroke-width="4"/>${[
      text(220, 280, 'Mot. 3~'),
      text(700, 280, 'Nr. 40718'),
      text(220, 400, '2.2 kW'),
      text(700, 400, '1425 r/min'),
      text(220, 520, '230/400 V'),
      text(700, 520, '8.3/4.8 A'),
      text(220, 640, '50 Hz'),
      text(700, 640, 'cos φ 0.81'),
      text(220, 760, 'IP 55'),
      text(700, 760, 'Ins. cl. F'),
    ].join('')}`,
  );

const COLUMNS = [100, 400, 700, 1000, 1300];
const ROWS = [200, 320, 410, 500, 590, 680];
const CELLS = [
  ['No.', 'mm H2O', 'A', 'rpm'],
  ['1', '160', '3.1', '2910'],
  ['2', '151', '3.9', '2895'],
  ['3', '118', '4.7', '2880'],
  ['4', '64', '5.6', '2862'],
];
const HEADS = ['', 'Static pressure', 'Current', 'Speed'];

const sheet = () =>
  picture(
    `<rect width="100%" height="100%" fill="#f6f4ee"/><path stroke="#222" stroke-width="3" d="${[
      ...COLUMNS.map((x) => `M${x} ${ROWS[0]}V${ROWS.at(-1)}`),
      ...ROWS.map((y) => `M${COLUMNS[0]} ${y}H${COLUMNS.at(-1)}`),
    ].join(
      '',
    )}"/>${text(110, 140, 'Voltage 400 V')}<g font-size="32">${HEADS.map((t, c) => text(COLUMNS[c]! + 12, ROWS[0]! + 45, t)).join('')}${CELLS.flatMap(
      (row, r) => row.map((t, c) => text(COLUMNS[c]! + 40, ROWS[r]! + (r ? 58 : 98), t)),
    ).join('')}</g>`,
  );

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
});
afterAll(() => bench.stop());

async function photo(jpeg: Buffer): Promise<string> {
  return JSON.parse((await bench.call('/api/photos', form('photo', jpeg))).text).photoId;
}
const read = async (jpeg: Buffer, what: string, body: unknown = {}) =>
  bench.call(`/api/photos/${await photo(jpeg)}/${what}`, json('POST', body));

test('a plain plate is read, after a sheet as before it: what one reading told the engines is gone in the next', async () => {
  const first = await read(await plate(), 'nameplate');
  const table = await read(await sheet(), 'readings-sheet');
  const again = await read(await plate(), 'nameplate');
  expect([first.status, table.status]).toEqual([200, 200]);
  const values = Object.entries(JSON.parse(first.text).fields).map(([name, field]) => [
    name,
    (field as { value: unknown }).value,
  ]);
  expect(Object.fromEntries(values)).toMatchObject({
    ratedPower_W: 2200,
    voltage_V: [230, 400],
    current_A: [8.3, 4.8],
    frequency_Hz: 50,
    speed_rpm: 1425,
    powerFactor: 0.81,
    phases: 3,
    ipRating: 'IP55',
    insulationClass: 'F',
  });
  expect(again.text).toBe(first.text);
  const { columns, rows } = JSON.parse(table.text);
  expect(columns.map(({ quantity }: { quantity: string }) => quantity)).toEqual([
    'opening',
    'staticPressure_Pa',
    'current_A',
    'speed_rpm',
  ]);
  // mm of water as of ISO 80000-4: 9.80665 Pa
  expect(rows.map((row: number[]) => row[1]! / 9.80665)).toEqual([160, 151, 118, 64].map((v) => expect.closeTo(v, 6)));
  expect(rows.map((row: number[]) => row.slice(2))).toEqual([
    [3.1, 2910],
    [3.9, 2895],
    [4.7, 2880],
    [5.6, 2862],
  ]);
});

test('each field says where it stands in the photo', async () => {
  const { fields } = JSON.parse((await read(await plate(), 'nameplate')).text);
  const [x, y, w, h] = fields.speed_rpm.box_px;
  // where "1425" was drawn, within a letter's width
  expect([x, y + h]).toEqual([700, 400].map((v) => expect.closeTo(v, -2)));
  expect(w).toBeGreaterThan(60);
  expect(w).toBeLessThan(400);
});

test('a picture with nothing written on it is declined in words', async () => {
  const wall = await picture('<rect width="100%" height="100%" fill="#b8b09a"/>');
  for (const what of ['nameplate', 'readings-sheet']) {
    const answer = await read(wall, what);
    expect(answer.status).toBe(422);
    expect(problemOf(answer).detail).toMatch(/was found on this photo/);
  }
});

test('nothing can be told beforehand, and the steps are told on request', async () => {
  const told = await read(await plate(), 'nameplate', { language: 'de' });
  expect([told.status, problemOf(told).errors.map(({ path }) => path)]).toEqual([400, ['/language']]);
  const id = await photo(await plate());
  const answer = await bench.call(`/api/photos/${id}/nameplate`, {
    ...json('POST', {}),
    headers: { 'Content-Type': 'application/json', Accept: 'application/x-ndjson' },
  });
  const lines = answer.text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines[0]).toEqual({ step: 'writing' });
  expect(lines.at(-1).reading.fields.ratedPower_W.value).toBe(2200);
});
