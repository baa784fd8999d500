import type { Page } from 'playwright-core';

/**
 * What is wrong with the page as a document: its language and title, its one main part and heading, headings that skip a
 * level, ids that are there twice, and labels that name an element which is not there (WCAG 2.2, 1.3.1, 2.4.2, 3.1.1).
 */
export function pageFaults(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const faults: string[] = [];
    if (document.documentElement.lang === '') faults.push('no language');
    if (document.title === '') faults.push('no title');
    if (document.querySelectorAll('main').length !== 1) faults.push('not one main part');
    if (document.querySelectorAll('h1').length !== 1) faults.push('not one main heading');
    let level = 0;
    for (const heading of document.querySelectorAll('h1, h2, h3, h4, h5, h6')) {
      const own = Number(heading.localName.slice(1));
      // A dialog begins anew, at the second level or below.
      if (own > level + 1 && !heading.closest('[role="dialog"]')) {
        faults.push(`"${heading.textContent ?? ''}" skips a level: h${own} after h${level}`);
      }
      level = own;
    }
    const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
    for (const id of new Set(ids.filter((one, index) => ids.indexOf(one) !== index)))
      faults.push(`id ${id} twice`);
    for (const name of ['aria-labelledby', 'aria-describedby']) {
      for (const element of document.querySelectorAll(`[${name}]`)) {
        const missing = (element.getAttribute(name) ?? '')
          .split(' ')
          .filter((id) => !document.getElementById(id));
        if (missing.length > 0)
          faults.push(`${element.localName} ${name} names ${missing.join(' ')}, which is not there`);
      }
    }
    return faults;
  });
}
