import { failed, type Result } from '../problem';
import type { DrawingSize } from './drawing';
import { notADrawing, withoutByteOrderMark } from './drawing-text';
import { limits } from './limits';
import { latin1 } from './pairs';
import type { RawDrawing } from './raw-drawing';
import { binaryMark, readBinaryPairs } from './read-binary-pairs';
import { readDxf } from './read-dxf';
import { readPairs } from './read-pairs';

/** Reads a drawing by what its bytes are, whatever its name: DXF (ASCII or binary). */
export function readDrawing(bytes: Uint8Array): Result<RawDrawing> {
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
    return pairs.ok ? readDxf(pairs.value) : pairs;
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
  const pairs = readPairs(withoutByteOrderMark(bytes));
  return pairs.ok ? readDxf(pairs.value) : pairs;
}

export { outlineOf } from './outline-of';

/** What a person needs to tell mm from inch: the stated unit and the extent in drawing units (0 × 0 without curves). */
export function drawingSize(raw: RawDrawing): DrawingSize {
  const { minX, minY, maxX, maxY } = raw.box;
  return { statedUnit: raw.statedUnit, width: Math.max(0, maxX - minX), height: Math.max(0, maxY - minY) };
}
