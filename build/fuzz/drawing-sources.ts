import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The real files that are damaged: our samples, the known drawings, and an SVG and a list of points. */
export function drawingSources(projectFolder: string): readonly Uint8Array[] {
  const folders = [join(projectFolder, 'samples'), join(projectFolder, 'tests/fixtures/dxf')];
  const files = folders.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.dxf'))
      .sort()
      .map((name) => new Uint8Array(readFileSync(join(folder, name)))),
  );
  return [...files, new TextEncoder().encode(svg), new TextEncoder().encode(points)];
}

const svg =
  '<?xml version="1.0"?>\n<svg width="80mm" height="40mm" viewBox="0 0 80 40">\n<g id="cut" transform="translate(2,3) rotate(5)">\n' +
  '<path d="M0 0H60a10 10 0 0 1 0 20C40 25 20 25 0 20Z"/>\n<circle cx="20" cy="10" r="4"/>\n<rect x="30" y="6" width="9" height="7" rx="2"/>\n' +
  '<polygon points="45,6 52,6 48,14"/>\n<ellipse cx="10" cy="10" rx="3" ry="5"/>\n</g>\n</svg>\n';

const points = 'x mm,y mm\n0,0\n40,0\n40,25.5\n0,25.5\n\n10,10\n20,10\n20,15\n10,15\n';
