import type { Page } from 'playwright-core';

/** What moves, where less motion is asked for (prefers-reduced-motion), for longer than a tenth of a second. */
export async function movingParts(page: Page): Promise<string[]> {
  const moving = await page.evaluate(() => {
    const seconds = (text: string) => Math.max(...text.split(',').map((one) => Number.parseFloat(one)));
    return [...document.querySelectorAll('*')].flatMap((element) => {
      const { transitionDuration, animationDuration, animationName } = getComputedStyle(element);
      const lasts = Math.max(
        seconds(transitionDuration),
        animationName === 'none' ? 0 : seconds(animationDuration),
      );
      return lasts > 0.1
        ? [`${element.localName}.${element.getAttribute('class') ?? ''} moves for ${lasts} s`]
        : [];
    });
  });
  return [...new Set(moving)];
}
