import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { sheetFonts, type SheetFonts } from '../../core/output/pdf/sheet-fonts';

const font = (name: string) =>
  new Uint8Array(
    readFileSync(fileURLToPath(new URL(`../../core/output/pdf/fonts/${name}`, import.meta.url))),
  );

/** The fonts that the program ships. */
export const testFonts = (): SheetFonts => sheetFonts(font('sheet-regular.ttf'), font('sheet-bold.ttf'));
