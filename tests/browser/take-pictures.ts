/**
 * Takes the pictures of README.md from the real page with the demo job: `node --import tsx tests/browser/take-pictures.ts`.
 */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { startBrowser } from './launch.ts';

const folder = fileURLToPath(new URL('../../fixtures/pictures/', import.meta.url));
mkdirSync(folder, { recursive: true });

const bench = await startBrowser();
try {
  for (const [window, place, language] of [
    ['desk', 'match', 'en'],
    ['phone', 'match', 'en'],
    ['phone', 'blowers', 'en'],
    ['phone', 'ducts', 'en'],
    ['phone', 'match', 'ur'],
    ['phone', 'card', 'en'],
  ] as const) {
    const { page, context } = await bench.open(window, '/', { deviceScaleFactor: window === 'desk' ? 1 : 1.5 });
    if (language === 'ur') await page.getByText('اردو').first().tap();
    await page
      .locator('main button, #app button')
      .filter({ hasText: /demo|نمونہ/ })
      .first()
      .click();
    await page.locator('.title-block, nav').first().waitFor();
    await page.goto(`${bench.address}/#/${place}`);
    await page.waitForTimeout(3000);
    await page.screenshot({ path: `${folder}${window}-${place}${language === 'en' ? '' : `-${language}`}.png` });
    await context.close();
  }
} finally {
  await bench.stop();
}
