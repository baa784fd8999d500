import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/**
 * CommonJS for all: a sandboxed preload script can be nothing else, and some bundled packages still call require.
 */
const programs = {
  main: 'electron/main/main.ts',
  preload: 'electron/preload/preload.ts',
  cli: 'electron/cli/cli.ts',
  'local-window': 'electron/local-window/local-window.ts',
};

export type Program = keyof typeof programs;

/**
 * Bundles the programs into NAME.cjs in the folder, each one file that needs no package beside it. Returns the files that
 * are in them.
 */
export async function bundlePrograms(
  projectFolder: string,
  outFolder: string,
  names: readonly Program[] = Object.keys(programs) as Program[],
): Promise<readonly string[]> {
  for (const name of names) rmSync(join(outFolder, `${name}.cjs`), { force: true });
  const built = await Promise.all(
    names.map((name) =>
      build({
        entryPoints: [join(projectFolder, programs[name])],
        outfile: join(outFolder, `${name}.cjs`),
        bundle: true,
        platform: 'node',
        format: 'cjs',
        target: 'node20',
        // The last three are for pictures of web pages in a PDF: no sheet has any.
        external: ['electron', 'html2canvas', 'canvg', 'dompurify'],
        loader: { '.ttf': 'binary' },
        // As in the page: dxf-parser's CommonJS build has other export names than its module.
        mainFields: ['module', 'main'],
        legalComments: 'eof',
        logLevel: 'warning',
        metafile: true,
        absWorkingDir: projectFolder,
      }),
    ),
  );
  return built.flatMap(({ metafile }) =>
    Object.values(metafile.outputs).flatMap(({ inputs }) =>
      Object.entries(inputs)
        .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
        .map(([file]) => join(projectFolder, file)),
    ),
  );
}
