import { programStyleSchema, styleFormat, styleVersion, type ProgramStyle } from './program-style';
import { styleComments } from './style-comments';

/**
 * A style as a file with a comment beside every value, so that a shop can change it by hand: JSON with comments, the
 * same for the same style.
 */
export function writeStyleFile(style: ProgramStyle): string {
  const file = { format: styleFormat, version: styleVersion, ...programStyleSchema.parse(style) };
  return `{\n${fieldLines(file, '', 1).join('\n')}\n}\n`;
}

/** The fields of a group, each with its comment above it. */
function fieldLines(
  group: Readonly<Record<string, unknown>>,
  path: string,
  depth: number,
): readonly string[] {
  const indent = '  '.repeat(depth);
  const entries = Object.entries(group);
  return entries.flatMap(([key, value], k) => {
    const name = path === '' ? key : `${path}.${key}`;
    const comma = k < entries.length - 1 ? ',' : '';
    const comments = (styleComments[name] ?? []).map((line) => `${indent}// ${line}`);
    const start = `${indent}${JSON.stringify(key)}: `;
    if (!isGroup(value)) return [...comments, `${start}${valueText(value)}${comma}`];
    return [...comments, `${start}{`, ...fieldLines(value, name, depth + 1), `${indent}}${comma}`];
  });
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const valueText = (value: unknown): string =>
  Array.isArray(value) ? `[${value.map((one) => JSON.stringify(one)).join(', ')}]` : JSON.stringify(value);
