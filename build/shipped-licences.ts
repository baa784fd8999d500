import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A package of which a part is in what we ship. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  /** SPDX expression, as the package states it. */
  readonly licence: string;
  /** The licence's own words. */
  readonly text: string;
}

/** Licences that ask for no more than to be told along: what we ship may have no other. */
const permissiveLicences: ReadonlySet<string> = new Set([
  ...['MIT', 'MIT-0', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0', 'BSL-1.0', 'Zlib'],
  ...['BlueOak-1.0.0', 'Unlicense', 'CC0-1.0'],
]);

/** Whether an SPDX expression leaves a permissive licence to choose. */
export function isPermissive(expression: string): boolean {
  const bare = expression.replace(/^\((.*)\)$/, '$1');
  if (bare.includes(' OR ')) return bare.split(' OR ').some(isPermissive);
  return bare.split(' AND ').every((one) => permissiveLicences.has(one));
}

/** The folder of the package that a module's file belongs to, below node_modules; null for our own. */
export function packageFolderOf(moduleFile: string): string | null {
  const path = moduleFile.replaceAll('\\', '/').replace(/^\0+/, '');
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0] ?? null;
}

/** The packages that modules come from, by name. */
export function shippedPackages(modules: Iterable<string>): readonly ShippedPackage[] {
  const folders = new Set([...modules].flatMap((file) => packageFolderOf(file) ?? []));
  return [...folders].map(describePackage).sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

function describePackage(folder: string): ShippedPackage {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    name: string;
    version: string;
    license?: string;
  };
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : '';
  return { name, version, licence: spdxNames[license ?? ''] ?? license ?? 'not stated', text };
}

/** What two packages call the Boost Software License. */
const spdxNames: Readonly<Record<string, string>> = { BSL: 'BSL-1.0' };

/** The list as it is shipped: our fonts' licence and every package's, with its words. */
export function licenceList(packages: readonly ShippedPackage[], projectFolder: string): string {
  const fonts = join(projectFolder, 'core/output/pdf/fonts/LICENSE');
  const parts = [
    ...(existsSync(fonts)
      ? [
          {
            name: 'DejaVu fonts, of the sheets',
            version: '',
            licence: 'Bitstream Vera',
            text: readFileSync(fonts, 'utf8').trim(),
          },
        ]
      : []),
    ...packages,
  ];
  const head = [
    'Diewright is under the MIT licence. It has parts of these packages in it, each under its own licence:',
    '',
    ...parts.map(
      ({ name, version, licence }) => `  ${[name, version].filter(Boolean).join(' ')} (${licence})`,
    ),
  ];
  const words = parts.map(
    ({ name, version, licence, text }) =>
      `${'-'.repeat(72)}\n${[name, version].filter(Boolean).join(' ')} (${licence})\n\n${text || 'The package states its licence without its words.'}`,
  );
  return `${[head.join('\n'), ...words].join('\n\n')}\n`;
}
