import { failed, type Result } from '../problem';
import { notADrawing, withoutByteOrderMark } from './drawing-text';
import { limits } from './limits';
import { latin1 } from './pairs';
import type { RawDrawing } from './raw-drawing';
import { untold, type Tell } from './tell';
import { binaryMark, readBinaryPairs } from './read-binary-pairs';
import { readDxf } from './read-dxf';
import { readCsv, looksLikeCsv } from './read-csv';
import { readPairs } from './read-pairs';
import { readSvg } from './read-svg';

/** Reads a drawing by what its bytes are, whatever its name: DXF (ASCII or binary), SVG, or a list of points. */
export function readDrawing(bytes: Uint8Array, tell: Tell = untold): Result<RawDrawing> {
  if (bytes.length > limits.bytes) {
    return failed(
      'drawing-too-large',
      `The file has ${Math.round(bytes.length / 1e6)} MB; at most ${Math.round(limits.bytes / 1e6)} MB are read`,
      '',
      'Save the part by itself, without the sheet and everything that is not its outline.',
    );
  }
  const start = latin1(bytes, 0, Math.min(binaryMark.length, bytes.length));
  if (start === binaryMark) {
    const pairs = readBinaryPairs(bytes);
    return pairs.ok ? readDxf(pairs.value, tell) : pairs;
  }
  if (start.startsWith(binaryMark.slice(0, 18))) {
    return failed(
      'drawing-damaged',
      'The file is a binary DXF whose first line is damaged, as by a transfer that changed its line ends',
      'byte 19',
      'Send it again as a binary file or packed into a ZIP, or save it as ASCII DXF.',
    );
  }
  const problem = notADrawing(bytes);
  if (problem) return { ok: false, problem };
  const text = withoutByteOrderMark(bytes);
  if (looksLikeSvg(text)) return readSvg(text);
  if (looksLikeCsv(text)) return readCsv(text);
  const pairs = readPairs(text);
  return pairs.ok ? readDxf(pairs.value, tell) : pairs;
}

/** XML whose first element that is no heading is an SVG. */
const looksLikeSvg = (text: Uint8Array): boolean =>
  /^\s*<(\?xml|!--|!DOCTYPE\s+svg|([\w-]+:)?svg[\s>/])/i.test(latin1(text, 0, Math.min(256, text.length))) &&
  /<([\w-]+:)?svg[\s>/]/i.test(latin1(text, 0, Math.min(65_536, text.length)));

export { outlineOf } from './outline-of';
