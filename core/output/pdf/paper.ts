import { jsPDF } from 'jspdf';
import type { SheetSettings } from '../../inspection-settings';
import type { SheetFonts } from './sheet-fonts';
import type { SheetHead } from './sheet-head';

/** A document in the making: pages of one size, everything in mm from the upper left corner. */
export interface Paper {
  readonly doc: jsPDF;
  readonly head: SheetHead;
  readonly width: number;
  readonly height: number;
  /** What pages may be filled with: below the head, above the foot. */
  readonly area: Area;
}

export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const margin = 10;
const headHeight = 17;
const footHeight = 6;

/**
 * An empty document. The same content gives the same bytes: no clock, no random identity, and coordinates with eight
 * decimals of a point, far below what any printer or magnification shows.
 */
export function newPaper(
  page: SheetSettings['page'],
  orientation: Orientation,
  fonts: SheetFonts,
  head: SheetHead,
): Paper {
  const doc = new jsPDF({
    unit: 'mm',
    format: formatOf(page, orientation),
    orientation,
    compress: true,
    floatPrecision: 8,
    putOnlyUsedFonts: true,
  });
  doc.setFileId('00000000000000000000000000000000');
  doc.setCreationDate("D:20000101000000+00'00'");
  doc.setProperties({ title: `${head.title}: ${head.job}` });
  for (const [style, file] of [
    ['normal', fonts.regular],
    ['bold', fonts.bold],
  ] as const) {
    doc.addFileToVFS(`${style}.ttf`, file);
    doc.addFont(`${style}.ttf`, fontName, style);
  }
  const { width, height } = paperSize(page, orientation);
  return { doc, head, width, height, area: paperArea(page, orientation) };
}

function formatOf(page: SheetSettings['page'], orientation: Orientation): [number, number] {
  const { width, height } = paperSize(page, orientation);
  return [width, height];
}

export type Orientation = 'portrait' | 'landscape';

/** mm: ISO 216, ANSI/ASME Y14.1. */
function paperSize(page: SheetSettings['page'], orientation: Orientation) {
  const [narrow, long] = page === 'letter' ? [215.9, 279.4] : [210, 297];
  return orientation === 'portrait' ? { width: narrow, height: long } : { width: long, height: narrow };
}

/** What a page may be filled with. */
export function paperArea(page: SheetSettings['page'], orientation: Orientation): Area {
  const { width, height } = paperSize(page, orientation);
  return {
    left: margin,
    top: margin + headHeight,
    right: width - margin,
    bottom: height - margin - footHeight,
  };
}

export const fontName = 'Sheet';

/** Writes the head and foot of all pages and gives the file's bytes, one character a byte. */
export function finishedPaper(paper: Paper): string {
  const { doc } = paper;
  const pages = doc.getNumberOfPages();
  for (let page = 1; page <= pages; page++) {
    doc.setPage(page);
    writeHead(paper, page, pages);
  }
  return doc.output();
}

export interface TextStyle {
  /** pt. */
  readonly size: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'right' | 'center';
  readonly colour?: string;
}

/** One line of text, its base line at y. What the line breaks of a name would be is a blank. */
export function writeText({ doc }: Paper, text: string, x: number, y: number, style: TextStyle): void {
  setStyle(doc, style);
  doc.text(oneLine(text), x, y, { align: style.align ?? 'left' });
}

/** The text in lines that fit a width, mm. */
export function linesWithin(
  { doc }: Paper,
  text: string,
  width: number,
  style: TextStyle,
): readonly string[] {
  setStyle(doc, style);
  return doc.splitTextToSize(oneLine(text), width) as string[];
}

/** As much of a text as fits a width, mm, with three dots where something is missing. */
export function textWithin(paper: Paper, text: string, width: number, style: TextStyle): string {
  setStyle(paper.doc, style);
  const whole = oneLine(text);
  if (paper.doc.getTextWidth(whole) <= width) return whole;
  let length = whole.length;
  while (length > 1 && paper.doc.getTextWidth(`${whole.slice(0, length)}…`) > width) length--;
  return `${whole.slice(0, length)}…`;
}

function setStyle(doc: jsPDF, { size, bold = false, colour = ink }: TextStyle): void {
  doc.setFont(fontName, bold ? 'bold' : 'normal');
  doc.setFontSize(size);
  doc.setTextColor(colour);
}

export const ink = '#000000';

const oneLine = (text: string): string => text.replace(/[\s\p{C}]+/gu, ' ').trim();

function writeHead(paper: Paper, page: number, pages: number): void {
  const { doc, head, width } = paper;
  const right = width - margin;
  const small = { size: 8 };
  const state = { size: 11, bold: true };
  writeText(paper, head.state, right, margin + 4, { ...state, align: 'right' });
  const room = right - margin - doc.getTextWidth(head.state) - 4;
  writeText(paper, textWithin(paper, head.title, room, state), margin, margin + 4, state);
  const named = textWithin(paper, `Job ${head.job} · drawing ${head.drawing}`, right - margin - 32, small);
  writeText(paper, named, margin, margin + 8.5, small);
  writeText(paper, `Page ${page} of ${pages}`, right, margin + 8.5, { ...small, align: 'right' });
  const stated = `Revision ${head.revision} · date ${head.date} · lengths in ${head.units}`;
  writeText(paper, textWithin(paper, stated, right - margin, small), margin, margin + 12.5, small);
  doc.setDrawColor(ink);
  doc.setLineDashPattern([], 0);
  doc.setLineWidth(head.released ? 0.25 : 0.8);
  doc.line(margin, margin + 14.5, right, margin + 14.5);
  const foot = paper.height - margin;
  writeText(paper, 'Made with Diewright. Check against the drawing before use.', margin, foot, {
    size: 7,
    colour: '#444444',
  });
}
