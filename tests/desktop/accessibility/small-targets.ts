import type { Page } from 'playwright-core';

/**
 * Targets smaller than 24 by 24 pixels that have no room of that size to themselves either (WCAG 2.2, 2.5.8: a circle of
 * 24 px about the middle of a small one meets no other target and no other small one's circle). Those in a sentence are
 * exempt there, and here.
 */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const least = 24;
    const isInSentence = (element: Element): boolean => {
      if (!getComputedStyle(element).display.startsWith('inline')) return false;
      let words = element.parentElement;
      while (words && getComputedStyle(words).display.startsWith('inline')) words = words.parentElement;
      const own = element.textContent ?? '';
      return words !== null && (words.textContent ?? '').replace(own, '').trim() !== '';
    };
    const targets = [
      ...document.querySelectorAll('button, a[href], input, select, textarea, summary, [role="slider"]'),
    ]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      // A tick box is as large as its label.
      .map((element) => ({ element, box: (element.closest('label') ?? element).getBoundingClientRect() }))
      .filter(({ element, box }) => {
        // What lies under a dialog or is scrolled away is no target now.
        const seen = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        return (
          box.width > 1 &&
          box.height > 1 &&
          seen !== null &&
          (element.closest('label') ?? element).contains(seen)
        );
      });
    const faults: string[] = [];
    for (const one of targets) {
      if ((one.box.width >= least && one.box.height >= least) || isInSentence(one.element)) continue;
      const x = one.box.left + one.box.width / 2;
      const y = one.box.top + one.box.height / 2;
      const meets = targets.find(({ element, box }) => {
        if (element === one.element || box === one.box || element.contains(one.element)) return false;
        if (box.width < least || box.height < least) {
          return Math.hypot(box.left + box.width / 2 - x, box.top + box.height / 2 - y) < least;
        }
        const aside = Math.max(box.left - x, 0, x - box.right);
        return Math.hypot(aside, Math.max(box.top - y, 0, y - box.bottom)) < least / 2;
      });
      const nameOf = (element: Element) =>
        `${element.localName}.${element.className} "${element.getAttribute('aria-label') ?? element.textContent?.slice(0, 30) ?? ''}"`;
      if (meets) {
        faults.push(
          `${nameOf(one.element)} ${Math.round(one.box.width)} × ${Math.round(one.box.height)} px beside ${nameOf(meets.element)}`,
        );
      }
    }
    return faults;
  });
}
