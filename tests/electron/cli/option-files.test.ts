import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exampleStyle } from '../../../core/example-style';
import { rs274Style } from '../../../core/neutral-style';
import { shippedTechnology } from '../../../core/shipped-technology';
import { sayProblem } from '../../../core/problem';
import { writeTechnologyFile } from '../../../core/technology-file';
import { writeStyleFile } from '../../../core/write-style-file';
import { optionFiles } from '../../../electron/cli/option-files';
import { temporaryFolder } from '../../support/temporary-folder';

const folder = temporaryFolder;

test('a style goes by its name or by its file, a table by its file', async () => {
  const at = folder();
  const [style, technology] = [join(at, 'a.diewright-style.json'), join(at, 'a.diewright-technology.json')];
  writeFileSync(style, writeStyleFile({ ...exampleStyle, name: 'ours' }));
  writeFileSync(technology, writeTechnologyFile({ ...shippedTechnology, name: 'ours' }));
  expect(await optionFiles({})).toEqual({ ok: true, value: { technology: undefined, style: undefined } });
  expect(await optionFiles({ style: 'rs274' })).toMatchObject({ value: { style: rs274Style } });
  expect(await optionFiles({ style, technology })).toMatchObject({
    value: { style: { name: 'ours' }, technology: { name: 'ours' } },
  });
});

test('a file that is not there, no text or no style says so, with its path', async () => {
  const at = folder();
  const said = async (style: string) => {
    const read = await optionFiles({ style });
    return read.ok ? 'ok' : sayProblem(read.problem);
  };
  expect(await said(join(at, 'none.json'))).toContain(join(at, 'none.json'));
  const path = join(at, 'bad.json');
  writeFileSync(path, Buffer.from([0xff, 0xfe, 0x00]));
  expect(await said(path)).toContain(`The file is not text in UTF-8 (${path})`);
  writeFileSync(path, writeStyleFile(exampleStyle).replace('"arcs": "radius"', '"arcs": "R"'));
  expect(await said(path)).toMatch(/arcs must be "centre" or "radius" \(.*bad\.json, line \d+\)/);
});
