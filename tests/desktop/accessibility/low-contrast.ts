import type { Page } from 'playwright-core';

/**
 * Texts and icons that stand out too little from what is behind them, from computed colours: 4.5 to 1 for text, 3 to 1
 * for large text (24 px, or 18.66 px bold) and icons that stand alone (WCAG 2.2, 1.4.3 and 1.4.11; the ratio is the one
 * defined there). What is switched off is exempt there, and here.
 */
export function lowContrast(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    type Colour = readonly [number, number, number, number];
    const canvas = document.createElement('canvas');
    const context = canvas.getContext('2d', { willReadFrequently: true });
    if (!context) throw new Error('no canvas');
    const known = new Map<string, Colour>();
    const colourOf = (text: string): Colour => {
      const before = known.get(text);
      if (before) return before;
      context.clearRect(0, 0, 1, 1);
      context.fillStyle = text;
      context.fillRect(0, 0, 1, 1);
      const [r = 0, g = 0, b = 0, a = 0] = context.getImageData(0, 0, 1, 1).data;
      const colour: Colour = [r, g, b, a / 255];
      known.set(text, colour);
      return colour;
    };
    const over = (top: Colour, alpha: number, below: Colour): Colour => [
      top[0] * alpha + below[0] * (1 - alpha),
      top[1] * alpha + below[1] * (1 - alpha),
      top[2] * alpha + below[2] * (1 - alpha),
      1,
    ];
    const behind = (element: Element): Colour => {
      const layers: Colour[] = [];
      for (let at: Element | null = element; at; at = at.parentElement) {
        const colour = colourOf(getComputedStyle(at).backgroundColor);
        if (colour[3] > 0) layers.push(colour);
        if (colour[3] === 1) break;
      }
      return layers.reverse().reduce<Colour>((below, top) => over(top, top[3], below), [255, 255, 255, 1]);
    };
    const opacity = (element: Element): number => {
      let product = 1;
      for (let at: Element | null = element; at; at = at.parentElement) {
        product *= Number(getComputedStyle(at).opacity);
      }
      return product;
    };
    const luminance = (colour: Colour): number => {
      const [r = 0, g = 0, b = 0] = colour.slice(0, 3).map((value) => {
        const share = value / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const isShown = (element: Element): boolean => {
      const { width, height } = element.getBoundingClientRect();
      return width > 1 && height > 1 && element.checkVisibility({ visibilityProperty: true });
    };
    const isOff = (element: Element): boolean =>
      element.closest(':disabled, [aria-disabled="true"], [data-disabled], [aria-hidden="true"]') !== null;

    const faults = new Set<string>();
    // A letter on a badge: what is behind it is the shape that is drawn before it.
    const shapeBehind = (element: Element): Colour => {
      const ground = behind(element);
      const own = element.getBoundingClientRect();
      for (let at = element.previousElementSibling; at; at = at.previousElementSibling) {
        const box = at.getBoundingClientRect();
        const colour = colourOf(getComputedStyle(at).fill);
        const isUnder = box.left <= own.left && box.right >= own.right && box.width > 0;
        if (isUnder && getComputedStyle(at).fill !== 'none') return over(colour, colour[3], ground);
      }
      return ground;
    };
    const look = (element: Element, paint: string, needed: number, what: string): void => {
      const ground = element instanceof SVGTextElement ? shapeBehind(element) : behind(element);
      const colour = colourOf(paint);
      const seen = over(colour, colour[3] * opacity(element), ground);
      const [light = 0, dark = 0] = [luminance(seen), luminance(ground)].sort((a, b) => b - a);
      const ratio = (light + 0.05) / (dark + 0.05);
      if (ratio < needed) {
        faults.add(
          `${what}: ${ratio.toFixed(2)}, less than ${needed}, .${element.getAttribute('class') ?? element.localName}`,
        );
      }
    };
    const neededFor = (style: CSSStyleDeclaration): number => {
      const size = Number.parseFloat(style.fontSize);
      return size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700) ? 3 : 4.5;
    };

    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const text = (node.textContent ?? '').trim();
      const element = node.parentElement;
      if (!element || text === '' || !isShown(element) || isOff(element)) continue;
      const style = getComputedStyle(element);
      const paint = element instanceof SVGElement ? style.fill : style.color;
      look(element, paint, neededFor(style), `"${text.slice(0, 40)}"`);
    }
    for (const field of document.querySelectorAll('input, textarea')) {
      if (!isShown(field) || isOff(field)) continue;
      const style = getComputedStyle(field);
      const { value, placeholder } = field as HTMLInputElement;
      const paint = value === '' ? getComputedStyle(field, '::placeholder').color : style.color;
      if (value !== '' || placeholder !== '')
        look(field, paint, neededFor(style), `field "${value || placeholder}"`);
    }
    for (const icon of document.querySelectorAll('button svg')) {
      const button = icon.closest('button');
      if (!button || !isShown(icon) || isOff(button) || button.textContent.trim() !== '') continue;
      look(icon, getComputedStyle(icon).stroke, 3, `icon of "${button.getAttribute('aria-label') ?? ''}"`);
    }
    return [...faults];
  });
}
