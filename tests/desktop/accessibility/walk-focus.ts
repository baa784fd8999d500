import type { Page } from 'playwright-core';

/**
 * Goes through the window with the Tab key and says what is wrong on the way: a stop that shows no outline of 2 px,
 * lies outside the window or under something else, or comes before one that stands earlier in the page; and controls that
 * are never reached (WCAG 2.2, 2.1.1, 2.1.2, 2.4.3, 2.4.7, 2.4.11). The outline's contrast is not measured.
 */
export async function walkFocus(page: Page): Promise<string[]> {
  const faults: string[] = [];
  const seen = new Set<number>();
  let last = -1;
  let rounds = 0;
  for (let step = 0; step < longestWalk; step++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(lookAtFocus);
    if (stop === null) {
      // Out of the page, into the browser's own controls; what stood before the place of the start comes next.
      if (++rounds > 1) break;
      last = -1;
      continue;
    }
    if (seen.has(stop.index)) break;
    seen.add(stop.index);
    faults.push(...stop.faults);
    // In a dialog the last stop is followed by the first: once round is no fault.
    if (stop.index < last && ++rounds > 1) faults.push(`${stop.name} comes after what stands behind it`);
    last = stop.index;
  }
  if (seen.size >= longestWalk) faults.push(`no end after ${longestWalk} stops`);
  faults.push(...(await page.evaluate(unreached, [...seen])));
  return faults;
}

/** The technology table alone has over five hundred. */
const longestWalk = 900;

function lookAtFocus(): { index: number; name: string; faults: string[] } | null {
  const element = document.activeElement;
  if (!element || element === document.body) return null;
  const name = `${element.localName}.${element.getAttribute('class') ?? ''} "${element.getAttribute('aria-label') ?? element.textContent?.slice(0, 30) ?? ''}"`;
  const faults: string[] = [];
  const style = getComputedStyle(element);
  if (style.outlineStyle === 'none' || Number.parseFloat(style.outlineWidth) < 2) {
    faults.push(`${name} shows no focus`);
  }
  const box = element.getBoundingClientRect();
  const x = Math.min(Math.max((box.left + box.right) / 2, 0), innerWidth - 1);
  const y = Math.min(Math.max((box.top + box.bottom) / 2, 0), innerHeight - 1);
  const isInside = box.right > 0 && box.bottom > 0 && box.left < innerWidth && box.top < innerHeight;
  const top = document.elementFromPoint(x, y);
  // A native tick box may lie under its own drawn mark within the same label.
  const home = element.closest('label') ?? element;
  if (!isInside || !top || !(home.contains(top) || top.contains(element))) {
    faults.push(
      `${name} at ${Math.round(x)}, ${Math.round(y)} has the focus but lies under ${top?.outerHTML.slice(0, 60) ?? 'nothing'}`,
    );
  }
  return { index: [...document.querySelectorAll('*')].indexOf(element), name, faults };
}

function unreached(reached: number[]): string[] {
  const all = [...document.querySelectorAll<HTMLElement>('*')];
  const dialog = document.querySelector('[role="dialog"]');
  return all
    .filter((element, index) => {
      if (element.tabIndex < 0 || reached.includes(index) || !element.checkVisibility()) return false;
      // A group hands the focus on to one of its own.
      if (reached.some((one) => element.contains(all[one] ?? null))) return false;
      if (element.matches(':disabled, [data-radix-focus-guard], html, body')) return false;
      // Of a group of radio buttons only one is a stop; the arrow keys go on from it.
      if (element instanceof HTMLInputElement && element.type === 'radio') return false;
      return !dialog || dialog.contains(element);
    })
    .map(
      (element) =>
        `never reached: ${element.localName}.${element.className} "${element.textContent?.slice(0, 30) ?? ''}"`,
    );
}
