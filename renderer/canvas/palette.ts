/** The colours of the picture, read from the style sheet so that each is written down once. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly faint: string;
  readonly die: string;
  readonly punch: string;
  readonly remainder: string;
  readonly exit: string;
  readonly stop: string;
  readonly decide: string;
  readonly note: string;
  readonly settled: string;
  readonly wide: string;
  readonly onMark: string;
  readonly focus: string;
}

const properties: Readonly<Record<keyof Palette, string>> = {
  paper: '--paper',
  ink: '--ink',
  inkSoft: '--ink-soft',
  faint: '--ink-faint',
  die: '--die',
  punch: '--punch',
  remainder: '--remainder',
  exit: '--exit',
  stop: '--stop',
  decide: '--decide',
  note: '--note',
  settled: '--within',
  wide: '--wide',
  onMark: '--on-mark',
  focus: '--focus',
};

/** The palette of the theme that the page shows now. */
export function readPalette(page: Document): Palette {
  const style = getComputedStyle(page.documentElement);
  const read = (property: string) => style.getPropertyValue(property).trim();
  return Object.fromEntries(
    Object.entries(properties).map(([name, property]) => [name, read(property)]),
  ) as unknown as Palette;
}
