/** One tag of an XML file. */
export interface SvgTag {
  /** Without its namespace prefix. */
  readonly name: string;
  readonly kind: 'open' | 'close' | 'empty';
  readonly attributes: ReadonlyMap<string, string>;
  /** Line it begins on. */
  readonly line: number;
}

/**
 * The tags of an XML text one by one; comments, instructions, doctypes and what stands between tags are passed over.
 * Returns where the text breaks off inside a tag or comment by a last tag named `!broken`.
 */
export function* svgTags(text: string): Iterable<SvgTag> {
  let at = 0;
  let line = 1;
  let counted = 0;
  const lineAt = (place: number): number => {
    for (; counted < place; counted++) if (text.charCodeAt(counted) === 10) line++;
    return line;
  };
  const broken = (place: number): SvgTag => ({
    name: '!broken',
    kind: 'empty',
    attributes: new Map(),
    line: lineAt(place),
  });
  for (;;) {
    const open = text.indexOf('<', at);
    if (open < 0) return;
    const aside = asides.find(([start]) => text.startsWith(start, open));
    if (aside) {
      const end = text.indexOf(aside[1], open + aside[0].length);
      if (end < 0) {
        yield broken(open);
        return;
      }
      at = end + aside[1].length;
      continue;
    }
    const end = tagEnd(text, open + 1);
    if (end < 0) {
      yield broken(open);
      return;
    }
    yield tagOf(text.slice(open + 1, end), lineAt(open));
    at = end + 1;
  }
}

const asides: readonly (readonly [start: string, end: string])[] = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<?', '?>'],
  ['<!', '>'],
];

/** The ">" that ends a tag: those within quotes do not. */
function tagEnd(text: string, from: number): number {
  let quote = 0;
  for (let i = from; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === 34 || code === 39) quote = code;
    else if (code === 62) return i;
  }
  return -1;
}

function tagOf(inside: string, line: number): SvgTag {
  const isClose = inside.startsWith('/');
  const isEmpty = !isClose && inside.endsWith('/');
  const body = isClose ? inside.slice(1) : isEmpty ? inside.slice(0, -1) : inside;
  const name = /^\s*([^\s/>]*)/.exec(body)?.[1] ?? '';
  const attributes = new Map<string, string>();
  const pattern = /([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
  pattern.lastIndex = name.length;
  for (let found = pattern.exec(body); found; found = pattern.exec(body))
    attributes.set(found[1] ?? '', decoded(found[2] ?? found[3] ?? ''));
  return {
    name: name.replace(/^.*:/, ''),
    kind: isClose ? 'close' : isEmpty ? 'empty' : 'open',
    attributes,
    line,
  };
}

const entities: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);

const decoded = (text: string): string =>
  text.includes('&')
    ? text.replace(
        /&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w+));/gi,
        (whole, hex?: string, ten?: string, name?: string) => {
          if (name !== undefined) return entities.get(name) ?? whole;
          const code = hex === undefined ? Number(ten) : Number.parseInt(hex, 16);
          return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
        },
      )
    : text;
