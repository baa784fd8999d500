import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import subsetFont from 'subset-font';
import { projectFolder } from './run-command';

/**
 * `npm run fonts`: the fonts of the sheets, cut down from DejaVu Sans Condensed to what sheets can say, so that a PDF is
 * written in a fraction of the time. Latin, Greek and Cyrillic with their extensions, and the signs of the trade.
 */
const ranges = [
  [0x20, 0x24f],
  [0x2b0, 0x2ff],
  [0x370, 0x52f],
  [0x1e00, 0x1eff],
  [0x2010, 0x205e],
  [0x2070, 0x209c],
  [0x20a0, 0x20bf],
  [0x2100, 0x214f],
  [0x2190, 0x21ff],
  [0x2200, 0x22ff],
  [0x2300, 0x2335],
  [0x25a0, 0x25cf],
] as const;

const text = ranges
  .flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, k) => String.fromCodePoint(from + k)))
  .join('');

const folder = join(projectFolder, 'core/output/pdf/fonts');
mkdirSync(folder, { recursive: true });
for (const [from, to] of [
  ['DejaVuSansCondensed.ttf', 'sheet-regular.ttf'],
  ['DejaVuSansCondensed-Bold.ttf', 'sheet-bold.ttf'],
] as const) {
  const whole = readFileSync(join(projectFolder, 'node_modules/dejavu-fonts-ttf/ttf', from));
  const cut = await subsetFont(whole, text, { targetFormat: 'truetype', noLayoutClosure: true });
  writeFileSync(join(folder, to), cut);
  console.log(`${to}: ${cut.length} bytes`);
}
writeFileSync(
  join(folder, 'LICENSE'),
  readFileSync(join(projectFolder, 'node_modules/dejavu-fonts-ttf/LICENSE')),
);
