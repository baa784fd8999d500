import { failed, type Problem } from '../problem';
import { latin1 } from './pairs';

/** What the bytes are if they are no drawing that can be read, in words; null where nothing speaks against it. */
export function notADrawing(bytes: Uint8Array): Problem | null {
  const start = latin1(bytes, 0, Math.min(64, bytes.length));
  if (/^AC1\d\d\d/.test(start)) {
    return failed(
      'drawing-is-dwg',
      'The file is a DWG drawing, not a DXF',
      '',
      'Save the drawing as DXF (R12 to 2018) and open that.',
    ).problem;
  }
  if (start.startsWith('\u00ff\u00fe') || start.startsWith('\u00fe\u00ff')) {
    return failed(
      'drawing-not-dxf',
      'The file is saved as UTF-16 text, which no DXF is',
      '',
      'Save it as plain ASCII or UTF-8 text, or export the DXF again.',
    ).problem;
  }
  if (!hasContent(bytes)) {
    return failed(
      'drawing-empty',
      bytes.length === 0 ? 'The file is empty' : 'The file holds nothing but blanks',
      '',
      'Export the DXF again and check that it is not 0 bytes long.',
    ).problem;
  }
  const binary = bytes.indexOf(0);
  if (binary < 0) return null;
  return failed(
    'drawing-not-dxf',
    'The file is not a DXF drawing: it holds binary data',
    `byte ${binary + 1}`,
    'Choose a DXF file, or save the drawing as DXF in the program it was made with.',
  ).problem;
}

/** Without the mark that some editors put before UTF-8 text. */
export const withoutByteOrderMark = (bytes: Uint8Array): Uint8Array =>
  bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;

function hasContent(bytes: Uint8Array): boolean {
  for (const byte of bytes) if (byte !== 32 && (byte < 9 || byte > 13)) return true;
  return false;
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
