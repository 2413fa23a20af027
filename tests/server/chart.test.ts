import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { form, json, startBench } from './bench-server.ts';
import type { Bench } from './bench-server.ts';
import { problemOf } from './problem-of.ts';

const [WIDTH, HEIGHT] = [1200, 900];
/** Plot frame in the picture: left, right, top, bottom. */
const FRAME = { left: 200, right: 1100, top: 100, bottom: 750 };

const xOf = (flow_m3_h: number) => FRAME.left + ((FRAME.right - FRAME.left) * flow_m3_h) / 3000;
const yOf = (pressure_Pa: number) => FRAME.bottom - ((FRAME.bottom - FRAME.top) * pressure_Pa) / 2000;
/** The drawn curve: 1600 Pa at no flow, falling by a parabola to 400 Pa at 3000 m3/h. */
const pressureAt = (flow_m3_h: number) => 1600 - 1200 * (flow_m3_h / 3000) ** 2;

/** A plain printed chart: a frame, its grid, one curve. */
function drawnChart(): Promise<Buffer> {
  const grid = [1, 2, 3, 4, 5].flatMap((step) => [
    `M${xOf(step * 500)} ${FRAME.top}V${FRAME.bottom}`,
    `M${FRAME.left} ${yOf(step * 400)}H${FRAME.right}`,
  ]);
  const curve = Array.from({ length: 61 }, (_, index) => `${xOf(index * 50)} ${yOf(pressureAt(index * 50))}`);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}"><g fill="none">
    <path d="${grid.join('')}" stroke="#999" stroke-width="1.5"/>
    <rect x="${FRAME.left}" y="${FRAME.top}" width="${FRAME.right - FRAME.left}" height="${FRAME.bottom - FRAME.top}" stroke="black" stroke-width="4"/>
    <path d="M${curve.join('L')}" stroke="#113399" stroke-width="5"/></g></svg>`;
  return sharp({ create: { width: WIDTH, height: HEIGHT, channels: 3, background: '#f4f1e8' } })
    .composite([{ input: Buffer.from(svg) }])
    .jpeg({ quality: 92 })
    .toBuffer();
}

const hints = () => ({
  frameCorners_px: [
    [FRAME.left - 6, FRAME.bottom + 5],
    [FRAME.right + 4, FRAME.bottom + 7],
    [FRAME.right - 5, FRAME.top - 4],
    [FRAME.left + 6, FRAME.top + 3],
  ],
  axes: [
    { id: 'x', quantity: 'flow', unit: 'm3/h', scale: 'linear', min: 0, max: 3000 },
    { id: 'y1', quantity: 'static_pressure', unit: 'Pa', scale: 'linear', min: 0, max: 2000 },
  ],
  seeds: [{ yAxis: 'y1', quantity: 'static_pressure', speed_rpm: 2900, point_px: [xOf(1250), yOf(pressureAt(1250))] }],
});

let bench: Bench;
let call: string;
beforeAll(async () => {
  bench = await startBench();
  const { photoId } = JSON.parse((await bench.call('/api/photos', form('photo', await drawnChart()))).text);
  call = `/api/photos/${photoId}/chart`;
});
afterAll(() => bench.stop());

const read = (body: unknown) => bench.call(call, json('POST', body));

test('corners, scales and a touch become the curve in SI', async () => {
  const answer = await read(hints());
  expect([answer.status, answer.headers['content-type']]).toEqual([200, 'application/json; charset=utf-8']);
  const { curves, axes, frameCorners_px, confidence } = JSON.parse(answer.text);
  expect(axes.map(({ id, unit, max }: { id: string; unit: string; max: number }) => [id, unit, max])).toEqual([
    ['x', 'm3/h', 3000],
    ['y1', 'Pa', 2000],
  ]);
  expect(frameCorners_px).toHaveLength(4);
  expect(typeof confidence.needsReview).toBe('boolean');
  expect(curves).toHaveLength(1);
  expect(curves[0]).toMatchObject({ yAxis: 'y1', quantity: 'static_pressure', speed_rpm: 2900 });
  const points = curves[0].points as [number, number][];
  // half a percent of the scale, as the reader promises for a clean print
  const errors = points.map(([flow_m3_s, pressure_Pa]) => Math.abs(pressure_Pa - pressureAt(flow_m3_s * 3600)) / 2000);
  expect(Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length)).toBeLessThan(0.005);
  const flows = points.map(([flow]) => flow * 3600);
  expect(Math.min(...flows)).toBeLessThan(300);
  expect(Math.max(...flows)).toBeGreaterThan(2700);
});

test('hints that are not understood are 400, hints that cannot be 422, each with its place', async () => {
  const unknown = await read({ ...hints(), corners: [] });
  expect([unknown.status, problemOf(unknown).errors.map(({ path }) => path)]).toEqual([400, ['/corners']]);
  const unit = hints();
  unit.axes[1]!.unit = 'furlong';
  const furlong = await read(unit);
  expect([furlong.status, problemOf(furlong).errors[0]!.path]).toEqual([400, '/axes/1/unit']);
  const flat = hints();
  flat.axes[0]!.max = 0;
  const empty = await read(flat);
  expect([empty.status, problemOf(empty).errors[0]!.path]).toEqual([422, '/axes/0/max']);
  const outside = hints();
  outside.frameCorners_px[0] = [-900, 5000];
  expect((await read(outside)).status).toBe(422);
});

test('a plot without numbers is asked about: nothing is made up', async () => {
  const { frameCorners_px, axes } = hints();
  const whole = await read({});
  expect([whole.status, problemOf(whole).detail]).toEqual([
    422,
    'No fan chart was found on this photo. If there is one, mark its four corners; else take the photo again, nearer and in even light.',
  ]);
  const framed = await read({ frameCorners_px });
  expect([framed.status, problemOf(framed).errors]).toEqual([
    422,
    [
      {
        path: '/axes',
        message: 'The numbers along this plot could not be read: please type what stands at both ends of its scales.',
      },
    ],
  ]);
  const told = await read({ frameCorners_px, axes });
  expect(told.status).toBe(200);
  expect(JSON.parse(told.text).curves).toHaveLength(1);
});

test('on request the steps are told line by line, the reading last', async () => {
  const answer = await bench.call(call, {
    ...json('POST', hints()),
    headers: { 'Content-Type': 'application/json', Accept: 'application/x-ndjson' },
  });
  const lines = answer.text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines[0]).toEqual({ step: 'curves' });
  expect(lines.at(-1).reading.curves).toHaveLength(1);
  const refused = await bench.call(call, {
    ...json('POST', {}),
    headers: { 'Content-Type': 'application/json', Accept: 'application/x-ndjson' },
  });
  const last = JSON.parse(refused.text.trim().split('\n').at(-1)!);
  expect(last.problem).toMatchObject({ status: 422, errors: [{ path: '/frameCorners_px' }] });
});
