import type { Groups } from './drawn';

/**
 * The same groups as a binary DXF (DXF reference, "Binary DXF Files"): codes of two bytes from R13 on, of one byte
 * before. Written for tests from the reference, independent of the reader.
 */
export function binaryDxf(groups: Groups, width: 1 | 2): Uint8Array {
  const out: number[] = [...'AutoCAD Binary DXF\r\n\u001a\u0000'].map((c) => c.charCodeAt(0));
  for (let i = 0; i < groups.length; i += 2) {
    const code = Number(groups[i]);
    const value = groups[i + 1] ?? '';
    if (width === 2) out.push(...whole(code, 2));
    else if (code < 255) out.push(code);
    else out.push(255, ...whole(code, 2));
    out.push(...bytesOf(code, value));
  }
  return Uint8Array.from(out);
}

function bytesOf(code: number, value: string | number): number[] {
  if ((code >= 10 && code < 60) || (code >= 110 && code < 150) || (code >= 210 && code < 240)) {
    const view = new DataView(new ArrayBuffer(8));
    view.setFloat64(0, Number(value), true);
    return Array.from(new Uint8Array(view.buffer));
  }
  if (code >= 60 && code < 80) return whole(Number(value), 2);
  if (code >= 90 && code < 100) return whole(Number(value), 4);
  if (code >= 290 && code < 300) return [Number(value)];
  if (code === 310) return [String(value).length, ...letters(String(value))];
  return [...letters(String(value)), 0];
}

const letters = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));

function whole(value: number, size: 2 | 4): number[] {
  const view = new DataView(new ArrayBuffer(4));
  view.setInt32(0, value, true);
  return Array.from(new Uint8Array(view.buffer)).slice(0, size);
}
