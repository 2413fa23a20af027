import type { CDPSession, Locator, Page } from 'playwright-core';

/** Fingers on the real page, through the browser's own touch events (playwright's touchscreen can only tap). */
export type Point = readonly [x: number, y: number];

export async function fingersOn(page: Page) {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', points: readonly Point[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const between = (a: Point, b: Point, share: number): Point => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
  ];
  return {
    down: (at: Point) => send('touchStart', [at]),
    async move(from: Point, to: Point, steps = 8) {
      for (let i = 1; i <= steps; i += 1) await send('touchMove', [between(from, to, i / steps)]);
    },
    up: () => send('touchEnd', []),
    async drag(from: Point, to: Point) {
      await this.down(from);
      await this.move(from, to);
      await this.up();
    },
    async pinch(first: readonly [Point, Point], last: readonly [Point, Point]) {
      await send('touchStart', first);
      for (let i = 1; i <= 8; i += 1)
        await send('touchMove', [between(first[0], last[0], i / 8), between(first[1], last[1], i / 8)]);
      await send('touchEnd', []);
    },
  };
}

export async function middleOf(locator: Locator): Promise<Point> {
  const box = await locator.boundingBox();
  if (!box) throw new Error('not on the screen');
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** The verdict line once the answer to all that was typed is there. */
export async function verdictLine(page: Page): Promise<string> {
  const line = page.locator('.verdict-line:not(.thinking)');
  await line.waitFor();
  return (await line.innerText()).replace(/\s+/g, ' ').trim();
}
