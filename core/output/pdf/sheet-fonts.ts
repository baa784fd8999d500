/** The fonts that sheets are written in: TrueType files, their bytes one character each, as the PDF library takes them. */
export interface SheetFonts {
  readonly regular: string;
  readonly bold: string;
}

/** Fonts from the files' bytes. They come from outside, since core reads no files; once for all sheets. */
export const sheetFonts = (regular: Uint8Array, bold: Uint8Array): SheetFonts => ({
  regular: asText(regular),
  bold: asText(bold),
});

function asText(bytes: Uint8Array): string {
  const parts: string[] = [];
  // In parts: a call with a million arguments overflows the stack.
  for (let k = 0; k < bytes.length; k += 8192)
    parts.push(String.fromCharCode(...bytes.subarray(k, k + 8192)));
  return parts.join('');
}
