import { expect } from 'vitest';
import { openTestWindow } from '../harness/open-test-window';
import { windowTest } from '../harness/test-browser';
import { audit } from './audit';

windowTest('the audit sees what would keep somebody from working', async () => {
  const { page } = await openTestWindow();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await page.evaluate(() => {
    const put = (tag: string, words: string, style: string): HTMLElement => {
      const element = document.createElement(tag);
      element.textContent = words;
      element.style.cssText = style;
      document.querySelector('main')?.append(element);
      return element;
    };
    put('button', '', 'width: 40px; height: 40px');
    put('p', 'pale words', 'color: #888; background: #999');
    put('div', 'not a control', '').tabIndex = 0;
    put('button', 'no outline', 'outline: none');
    put('button', 'out of sight', 'position: fixed; left: -500px');
    const row = put('div', '', 'display: flex');
    for (const name of ['s1', 's2']) {
      const small = document.createElement('button');
      small.textContent = name;
      small.style.cssText = 'width: 12px; height: 12px; padding: 0; overflow: hidden';
      row.append(small);
    }
    put('p', 'slides', 'transition: all 2s');
    put('h4', 'too deep', '');
    put('p', 'named', '').setAttribute('aria-labelledby', 'nobody');
  });
  const faults = (await audit(page)).join('\n');
  expect(faults).toMatch(/button without a name/);
  expect(faults).toMatch(/takes the focus without a role/);
  expect(faults).toMatch(/light: "pale words": 1\.\d\d, less than 4\.5/);
  expect(faults).toMatch(/"no outline" shows no focus/);
  expect(faults).toMatch(/"out of sight" at .* has the focus but lies under/);
  expect(faults).toMatch(/"s1" 12 × 12 px beside .*"s2"/);
  expect(faults).toMatch(/moves for 2 s/);
  expect(faults).toMatch(/"too deep" skips a level: h4 after h2/);
  expect(faults).toMatch(/names nobody, which is not there/);
});
