// Runs a TypeScript file: `node build/run-typescript.mjs build/check.ts [arguments]`. It is bundled into one file under
// dist/scripts and imported, so that scripts are type-checked like everything else and need no tool but esbuild.
import { relative, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const top = fileURLToPath(new URL('..', import.meta.url));
const [entry, ...rest] = process.argv.slice(2);
if (!entry) {
  console.error('Give the TypeScript file to run.');
  process.exit(1);
}

// By its whole path: a bench and a fuzzer may have the same name, and both start themselves again.
const name = relative(resolve(top, 'build'), resolve(entry))
  .replace(/\.ts$/, '')
  .replaceAll(/[^\w-]+/g, '-');
const outfile = resolve(top, 'dist/scripts', `${name}.mjs`);
await build({
  entryPoints: [resolve(entry)],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  logLevel: 'warning',
});

process.argv = [process.argv[0], outfile, ...rest];
await import(pathToFileURL(outfile).href);
