import type { OwnMaterial } from '../../core/die/own-material';
import { materialsFileEnding, readMaterialsFile } from '../../core/materials-file';
import { styleFileEnding, type ProgramStyle } from '../../core/program-style';
import { done, failed, type Result } from '../../core/problem';
import { shippedStyles } from '../../core/shipped-styles';
import { readStyleFile } from '../../core/style-file';
import { technologyFileEnding, type Technology } from '../../core/technology';
import { readTechnologyFile } from '../../core/technology-file';
import { openFile } from '../services/open-file';
import type { Arguments } from './read-arguments';

/** What the files named by options hold; undefined where there is no such option. */
export interface OptionFiles {
  readonly technology: Technology | undefined;
  readonly style: ProgramStyle | undefined;
  readonly materials?: readonly OwnMaterial[] | undefined;
}

/** Opens and reads the files that options name; --style may name one of the shipped styles instead. */
export async function optionFiles(changes: Arguments['changes']): Promise<Result<OptionFiles>> {
  const technology = await read(changes.technology, readTechnologyFile, technologyFileEnding);
  if (!technology.ok) return technology;
  const shipped = Object.entries(shippedStyles).find(([name]) => name === changes.style)?.[1];
  const style = shipped ? done(shipped) : await read(changes.style, readStyleFile, styleFileEnding);
  if (!style.ok) return style;
  const materials = await read(changes.materials, readMaterialsFile, materialsFileEnding);
  return materials.ok
    ? done({ technology: technology.value, style: style.value, materials: materials.value })
    : materials;
}

async function read<T>(
  path: string | undefined,
  parse: (text: string) => Result<T>,
  ending: string,
): Promise<Result<T | undefined>> {
  if (path === undefined) return done(undefined);
  const opened = await openFile(path);
  if (!opened.ok) return opened;
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(opened.value.bytes);
  } catch {
    return failed('file-not-text', 'The file is not text in UTF-8', path, `Give a ${ending} file.`);
  }
  const parsed = parse(text);
  if (parsed.ok) return parsed;
  const where = [path, parsed.problem.where].filter(Boolean).join(', ');
  return { ok: false, problem: { ...parsed.problem, where } };
}
