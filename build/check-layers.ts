import { createRequire } from 'node:module';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { cruise, type ICruiseResult, type ICruiseOptions } from 'dependency-cruiser';

export const layeredFolders = ['core', 'renderer', 'electron', 'tests', 'build'] as const;

export interface LayerCheck {
  /** How many of our own files the tool looked at. */
  readonly looked: number;
  /** One line for each broken rule; also a line where the tool looked at fewer files than there are. */
  readonly violations: readonly string[];
}

/**
 * Checks every import below `folder` against build/dependency-rules.cjs. The tool can pass without having looked at
 * anything (with a compiler it does not know it reads no TypeScript), so the files it looked at are counted against
 * the files on disk.
 */
export async function checkLayers(folder: string, rulesFile: string): Promise<LayerCheck> {
  const rules = createRequire(import.meta.url)(rulesFile) as {
    forbidden: NonNullable<ICruiseOptions['ruleSet']>['forbidden'];
    options: ICruiseOptions;
  };
  const folders = layeredFolders.filter((name) => sourceFiles(join(folder, name)).length > 0);
  const reply = await cruise([...folders], {
    ...rules.options,
    baseDir: folder,
    validate: true,
    ruleSet: { forbidden: rules.forbidden ?? [] },
  });
  const { modules, summary } = reply.output as ICruiseResult;

  const own = new Set(modules.map((module) => module.source));
  const onDisk = folders.flatMap((name) => sourceFiles(join(folder, name)).map((file) => `${name}/${file}`));
  const missed = onDisk.filter((file) => !own.has(file));

  return {
    looked: onDisk.length - missed.length,
    violations: [
      ...summary.violations.map(
        ({ rule, from, to, cycle }) =>
          `${rule.name}: ${from} → ${cycle ? cycle.map(({ name }) => name).join(' → ') : to}`,
      ),
      ...missed.map((file) => `not looked at: ${file}`),
    ],
  };
}

function sourceFiles(folder: string): string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((file) => file.replaceAll('\\', '/'))
      .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts') && !file.startsWith('fixtures/'));
  } catch {
    return [];
  }
}
