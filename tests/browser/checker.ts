import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rules of the accessibility checker that a screen breaks, each with the element it found first. */
export async function broken(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Result = { violations: { id: string; nodes: { target: string[]; failureSummary: string }[] }[] };
    const checker = (globalThis as unknown as { axe: { run: (where: Document, options: object) => Promise<Result> } })
      .axe;
    const { violations } = await checker.run(document, { resultTypes: ['violations'] });
    return violations.map((v) => `${v.id}: ${v.nodes[0]!.target.join(' ')} ${v.nodes[0]!.failureSummary}`);
  });
}

/** Things to touch that are smaller than a fingertip, or stick out of the window. */
export const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a[href], input:not([type=file]), select, summary, label.pick')]
      .filter((element) => element.offsetParent !== null && getComputedStyle(element).opacity !== '0')
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.5 && box.width > 0)
      .map(
        ({ element, box }) =>
          `${element.tagName} ${element.className} ${element.textContent?.slice(0, 30)} ${box.width}×${box.height}`,
      ),
  );

/** How much wider than the window a page is [px]. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
