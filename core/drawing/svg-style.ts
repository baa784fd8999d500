/** What of an element's look matters to an outline; inherited from the groups it is in. */
export interface SvgStyle {
  readonly stroke: string;
  readonly fill: string;
  readonly hidden: boolean;
  readonly dashed: boolean;
}

/** The style of an element by its `style` attribute, else by presentation attributes, else by what holds it. */
export function styleOf(attributes: ReadonlyMap<string, string>, host: SvgStyle | null): SvgStyle {
  const inline = new Map(
    (attributes.get('style') ?? '')
      .split(';')
      .map((rule) => rule.split(':').map((part) => part.trim().toLowerCase()))
      .map(([name = '', value = '']) => [name, value]),
  );
  const value = (name: string): string | undefined =>
    inline.get(name) ?? attributes.get(name)?.trim().toLowerCase();
  const visibility = value('visibility');
  const dashes = value('stroke-dasharray');
  return {
    stroke: value('stroke') ?? host?.stroke ?? 'none',
    fill: value('fill') ?? host?.fill ?? 'black',
    hidden:
      value('display') === 'none' ||
      (visibility === undefined ? (host?.hidden ?? false) : visibility !== 'visible'),
    dashed: dashes === undefined ? (host?.dashed ?? false) : dashes !== 'none' && dashes !== '',
  };
}

/** The colour of the stroke, else of the filling, as 0xRRGGBB; black where it is named otherwise. */
export function svgColour({ stroke, fill }: SvgStyle): number {
  const text = stroke === 'none' ? fill : stroke;
  const hex = /^#([0-9a-f]{6}|[0-9a-f]{3})$/.exec(text)?.[1];
  if (hex !== undefined) return Number.parseInt(hex.length === 3 ? hex.replace(/./g, '$&$&') : hex, 16);
  const rgb = /^rgb\(\s*(\d{1,3})\s*,\s*(\d{1,3})\s*,\s*(\d{1,3})\s*\)$/.exec(text);
  if (rgb) return rgb.slice(1).reduce((sum, part) => sum * 256 + Math.min(255, Number(part)), 0);
  return names[text] ?? 0;
}

/** The basic colour keywords (CSS Color, "Basic color keywords"). */
const names: Readonly<Record<string, number>> = {
  black: 0x000000,
  silver: 0xc0c0c0,
  gray: 0x808080,
  white: 0xffffff,
  maroon: 0x800000,
  red: 0xff0000,
  purple: 0x800080,
  fuchsia: 0xff00ff,
  green: 0x008000,
  lime: 0x00ff00,
  olive: 0x808000,
  yellow: 0xffff00,
  navy: 0x000080,
  blue: 0x0000ff,
  teal: 0x008080,
  aqua: 0x00ffff,
};
