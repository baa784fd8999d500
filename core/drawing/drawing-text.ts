import { done, failed, type Result } from '../problem';

/**
 * The bytes of an ASCII DXF as text, one character a byte (Latin-1), without a byte order mark; or the problem with
 * what the file really is. Names are decoded later, once `$DWGCODEPAGE` is known (see decodeName).
 */
export function drawingText(bytes: Uint8Array): Result<string> {
  const start = latin1(bytes.subarray(0, 64));
  if (start.startsWith('AutoCAD Binary DXF')) {
    return failed(
      'drawing-binary',
      'The file is a binary DXF, which cannot be read',
      '',
      'Save the drawing as ASCII DXF and open that.',
    );
  }
  if (/^AC1\d\d\d/.test(start)) {
    return failed(
      'drawing-is-dwg',
      'The file is a DWG drawing, not a DXF',
      '',
      'Save the drawing as ASCII DXF (R12 to 2018) and open that.',
    );
  }
  if (start.startsWith('\u00ff\u00fe') || start.startsWith('\u00fe\u00ff')) {
    return failed(
      'drawing-not-dxf',
      'The file is saved as UTF-16 text, which no DXF is',
      '',
      'Save it as plain ASCII or UTF-8 text, or export the DXF again.',
    );
  }
  const text = latin1(start.startsWith('\u00ef\u00bb\u00bf') ? bytes.subarray(3) : bytes);
  if (text.trim() === '') {
    return failed(
      'drawing-empty',
      bytes.length === 0 ? 'The file is empty' : 'The file holds nothing but blanks',
      '',
      'Export the DXF again and check that it is not 0 bytes long.',
    );
  }
  if (text.includes('\u0000')) {
    return failed(
      'drawing-not-dxf',
      'The file is not a DXF drawing: it holds binary data',
      `byte ${text.indexOf('\u0000') + 1}`,
      'Choose a DXF file, or save the drawing as ASCII DXF in the program it was made with.',
    );
  }
  return done(text);
}

/**
 * A name out of a DXF: bytes by the code page up to R2004, UTF-8 from R2007 (AC1021) on, `\U+XXXX` by its number
 * (DXF reference, `$DWGCODEPAGE` and `$ACADVER`). An unknown code page is read as Windows-1252.
 */
export function decodeName(latin: string, version: string, codePage: string): string {
  const plain = /^[\u0000-\u007f]*$/.test(latin)
    ? latin
    : decoderFor(version, codePage).decode(bytesOf(latin));
  const named = plain.replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  // A name holds no line end, however it was written: it would shift every pair after it.

  return named.replace(/[\u0000-\u001f\u007f-\u009f]/g, ' ').trim();
}

function decoderFor(version: string, codePage: string): TextDecoder {
  if (/^AC\d{4}$/.test(version) && version >= 'AC1021') return new TextDecoder('utf-8');
  return new TextDecoder(codePages[codePage.trim().toUpperCase()] ?? 'windows-1252');
}

/** `$DWGCODEPAGE` names and the encodings of the same bytes (WHATWG Encoding standard names). */
const codePages: Readonly<Record<string, string>> = {
  ANSI_874: 'windows-874',
  ANSI_932: 'shift_jis',
  ANSI_936: 'gbk',
  ANSI_949: 'euc-kr',
  ANSI_950: 'big5',
  ANSI_1250: 'windows-1250',
  ANSI_1251: 'windows-1251',
  ANSI_1252: 'windows-1252',
  ANSI_1253: 'windows-1253',
  ANSI_1254: 'windows-1254',
  ANSI_1255: 'windows-1255',
  ANSI_1256: 'windows-1256',
  ANSI_1257: 'windows-1257',
  ANSI_1258: 'windows-1258',
  DOS866: 'ibm866',
};

const bytesOf = (latin: string): Uint8Array => Uint8Array.from(latin, (character) => character.charCodeAt(0));

function latin1(bytes: Uint8Array): string {
  // In slices: a call takes only so many arguments.
  const slice = 8192;
  let text = '';
  for (let i = 0; i < bytes.length; i += slice) {
    text += String.fromCharCode(...bytes.subarray(i, i + slice));
  }
  return text;
}
