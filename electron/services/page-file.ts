import { readFile, realpath, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export interface PageFile {
  readonly bytes: Uint8Array;
  readonly contentType: string;
}

const contentTypes: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.dxf': 'text/plain; charset=iso-8859-1',
};

/**
 * A file of the built page by the path of its address; `/` is the page itself. Null where there is none: also for
 * every path that is not made of plain names, so that none leads out of the folder, and for kinds that no page has.
 */
export async function pageFile(pageFolder: string, addressPath: string): Promise<PageFile | null> {
  let path: string;
  try {
    path = decodeURIComponent(addressPath);
  } catch {
    return null;
  }
  const names = (path === '/' ? '/index.html' : path).split('/').slice(1);
  if (names.length === 0 || !names.every((name) => /^[\w][\w.@-]*$/.test(name))) return null;
  const file = join(pageFolder, ...names);
  const contentType = contentTypes[extname(file).toLowerCase()];
  if (!file.startsWith(pageFolder + sep) || contentType === undefined) return null;
  try {
    if (!(await stat(file)).isFile()) return null;
    // A link may stand in the folder and lead out of it.
    const [real, folder] = await Promise.all([realpath(file), realpath(pageFolder)]);
    if (!real.startsWith(folder + sep)) return null;
    return { bytes: new Uint8Array(await readFile(real)), contentType };
  } catch {
    return null;
  }
}
