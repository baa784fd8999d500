import { autoTable } from 'jspdf-autotable';
import type { Box } from '../../geometry/contour';
import { fontName, ink, linesWithin, writeText, type Area, type Paper, type TextStyle } from './paper';
import { clipped, setStroke, viewOf, type PaperView } from './paper-view';
import { scaleBar } from './scale-bar';

/** A column of a table: its heading, and whether numbers stand in it. */
export interface Column {
  readonly name: string;
  readonly isNumber?: boolean;
}

export interface Picture {
  /** What is shown of the drawing, mm; a little is left around it. */
  readonly box: Box;
  /** mm on paper at the most. */
  readonly height: number;
  readonly say: string;
  draw(view: PaperView): void;
}

/** Headings, text, tables and pictures one below the other, page after page. */
export class SheetFlow {
  private readonly paper: Paper;
  private y: number;

  constructor(paper: Paper) {
    this.paper = paper;
    this.y = paper.area.top;
  }

  heading(text: string): void {
    this.needs(headingRoom);
    this.y += 6;
    writeText(this.paper, text, this.paper.area.left, this.y, { size: 11, bold: true });
    this.y += 2.5;
  }

  text(text: string, style: Partial<TextStyle> = {}): void {
    const { left, right } = this.paper.area;
    const full = { size: 8.5, ...style };
    for (const line of linesWithin(this.paper, text, right - left, full)) {
      this.needs(4.2);
      this.y += 4;
      writeText(this.paper, line, left, this.y, full);
    }
    this.y += 0.8;
  }

  /** A row for each name and what is said of it. */
  facts(rows: readonly (readonly [string, string])[]): void {
    this.table([{ name: '' }, { name: '' }], rows, { hasHead: false });
  }

  table(
    columns: readonly Column[],
    rows: readonly (readonly string[])[],
    { hasHead = true }: { hasHead?: boolean } = {},
  ): void {
    const { doc, area, width, height } = this.paper;
    // The library draws its lines with whatever dashes were drawn last.
    doc.setLineDashPattern([], 0);
    autoTable(doc, {
      startY: this.y + 1.5,
      margin: {
        left: area.left,
        right: width - area.right,
        top: area.top + 1.5,
        bottom: height - area.bottom,
      },
      theme: 'plain',
      // A short table is not torn apart.
      pageBreak: rows.length <= shortTable ? 'avoid' : 'auto',
      styles: {
        font: fontName,
        fontSize: 8,
        textColor: ink,
        lineColor: '#b4b4b4',
        lineWidth: { bottom: 0.1 },
        cellPadding: { top: 0.9, bottom: 0.9, left: 0.8, right: 1.6 },
        overflow: 'linebreak',
      },
      headStyles: { fontStyle: 'bold', lineColor: ink, lineWidth: { bottom: 0.25 } },
      ...(hasHead ? { head: [columns.map(({ name }) => name)] } : {}),
      body: rows.map((row) => row.map((cell) => cell.replace(/[\t\p{C}]+/gu, ' '))),
      columnStyles: Object.fromEntries(
        columns.map(({ isNumber = false }, k) => [
          k,
          { halign: isNumber ? 'right' : 'left', ...(!hasHead && k === 0 ? { cellWidth: 34 } : {}) },
        ]),
      ),
      didParseCell: ({ section, column, cell }) => {
        if (section === 'head' && columns[column.index]?.isNumber) cell.styles.halign = 'right';
      },
    });
    this.y = tableEnd(doc) + 2;
  }

  /** A picture in a frame, as large as fits, with a scale bar, and what it shows below it. */
  picture(picture: Picture): void {
    const { box, height, say } = picture;
    this.needs(height + 6);
    const { left, right } = this.paper.area;
    const frame: Area = { left, right, top: this.y + 2, bottom: this.y + 2 + height };
    const scale = fittingScale(box, frame);
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    const view = viewOf(this.paper, frame, middle, scale);
    clipped(this.paper, frame, () => picture.draw(view));
    setStroke(this.paper, { colour: '#808080', width: 0.15 });
    this.paper.doc.rect(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top);
    scaleBar(view, { x: frame.right - 3, y: frame.bottom - 3 }, this.paper.head.units);
    this.y = frame.bottom + 3.6;
    writeText(this.paper, say, left, this.y, { size: 7.5, colour: '#333333' });
    this.y += 1.5;
  }

  /** An area of the page for something else, e.g. a chart. */
  area(height: number): Area {
    this.needs(height + 3);
    const { left, right } = this.paper.area;
    const area = { left, right, top: this.y + 2, bottom: this.y + 2 + height };
    this.y = area.bottom + 1;
    return area;
  }

  /** Begins a page where less than so much room is left, mm. */
  needs(height: number): void {
    if (this.y + height <= this.paper.area.bottom) return;
    this.nextPage();
  }

  nextPage(): void {
    this.paper.doc.addPage();
    this.y = this.paper.area.top;
  }
}

/** Rows. */
const shortTable = 8;

/** A heading and the first lines of what it heads. */
const headingRoom = 22;

function fittingScale(box: Box, frame: Area): number {
  const room = 0.88;
  const across = ((frame.right - frame.left) * room) / Math.max(box.maxX - box.minX, leastSize);
  const up = ((frame.bottom - frame.top) * room) / Math.max(box.maxY - box.minY, leastSize);
  return Math.min(across, up);
}

/** A place without extent is shown a hundredth of a mm wide. */
const leastSize = 0.01;

function tableEnd(doc: object): number {
  const { lastAutoTable } = doc as { lastAutoTable?: { finalY?: number } };
  return lastAutoTable?.finalY ?? 0;
}
