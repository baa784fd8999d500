import { z } from 'zod';
import { nextOwnId, ownMaterialSchema, type OwnMaterial } from './die/own-material';
import type { Result } from './problem';
import { readOwnFile } from './read-own-file';

export const materialsFormat = 'diewright-materials';
const materialsVersion = 1;
export const materialsFileEnding = '.diewright-materials.json';

const contentSchema = z.strictObject({ materials: z.array(ownMaterialSchema).max(500) });

/** Own materials as text, the same for the same materials. */
export function writeMaterialsFile(materials: readonly OwnMaterial[]): string {
  const file = { format: materialsFormat, version: materialsVersion, materials };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Reads a file of own materials; whatever is wrong with it gets its sentence and line. */
export function readMaterialsFile(text: string): Result<readonly OwnMaterial[]> {
  const read = readOwnFile(text, {
    code: 'materials',
    noun: 'file of materials',
    format: materialsFormat,
    version: materialsVersion,
    ending: materialsFileEnding,
    schema: contentSchema,
  });
  return read.ok ? { ok: true, value: read.value.materials } : read;
}

/** Materials beside others: one that is named alike takes the other's place and id, a new one gets a new id. */
export function mergedMaterials(
  own: readonly OwnMaterial[],
  more: readonly OwnMaterial[],
): readonly OwnMaterial[] {
  return more.reduce<readonly OwnMaterial[]>((known, material) => {
    const same = known.find(({ name }) => name === material.name);
    if (same) return known.map((one) => (one === same ? { ...material, id: same.id } : one));
    return [...known, { ...material, id: nextOwnId(known) }];
  }, own);
}
