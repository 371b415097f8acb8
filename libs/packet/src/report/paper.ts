import PDFDocument from 'pdfkit';
import type { PacketFile } from '../packet-home';
import { BODY, FACE, FOOT, GAP, MARGIN, SMALL, write } from './sheet';
import type { Doc } from './sheet';
import { width } from './sheet';
import { drawTable } from './table';
import type { Column } from './table';

/** Where a drawing may draw, in points. */
export type Box = { readonly left: number; readonly top: number; readonly width: number; readonly height: number };

/** Paper with a structure that a screen reader follows: headings, paragraphs, lists, tables. */
export type Paper = {
  readonly heading: (level: 1 | 2 | 3, text: string) => void;
  readonly text: (text: string, how?: { readonly bold?: boolean; readonly small?: boolean }) => void;
  readonly list: (items: readonly string[]) => void;
  readonly table: (columns: readonly Column[], rows: readonly (readonly string[])[]) => void;
  /** A drawing, with the words a screen reader says in its place. */
  readonly figure: (
    is: { readonly alt: string; readonly height: number },
    draw: (doc: Doc, box: Box) => void,
  ) => void;
  readonly newPage: () => void;
  /** `foot`: what stands at the foot of page n of all. */
  readonly done: (foot: (page: number, of: number) => string) => Promise<Uint8Array>;
};

export type PaperWish = {
  readonly title: string;
  readonly language: string;
  /** The paper's own date: the same content gives the same bytes. */
  readonly date: Date;
  readonly attached: readonly (PacketFile & { readonly type: string; readonly about: string })[];
};

const HEADINGS = { 1: 20, 2: 14, 3: 11 } as const;

export const openPaper = ({ title, language, date, attached }: PaperWish): Paper => {
  const doc = new PDFDocument({
    ...{ subset: 'PDF/A-3a', pdfVersion: '1.7', tagged: true, lang: language, displayTitle: true },
    ...{ size: 'LETTER', bufferPages: true, font: FACE.plain },
    margins: { top: MARGIN, left: MARGIN, right: MARGIN, bottom: MARGIN + FOOT },
    info: { Title: title, CreationDate: date, ModDate: date },
  });
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  attach(doc, attached, date);

  return {
    heading: (level, text) => drawHeading(doc, level, text),
    text: (text, { bold = false, small = false } = {}) => {
      write(doc, 'P', () => {
        doc.font(bold ? FACE.bold : FACE.plain).fontSize(small ? SMALL : BODY);
        doc.text(text, MARGIN, doc.y, { width: width(doc) });
      });
      doc.y += GAP;
    },
    list: (items) => drawList(doc, items),
    table: (columns, rows) => drawTable(doc, columns, rows),
    figure: ({ alt, height }, draw) => {
      if (doc.y + height > doc.page.maxY()) doc.addPage();
      const top = doc.y;
      const element = doc.struct('Figure', { alt }, () => {
        draw(doc, { left: MARGIN, top, width: width(doc), height });
      });
      doc.addStructure(element);
      element.end();
      doc.x = MARGIN;
      doc.y = top + height + GAP;
    },
    newPage: () => {
      doc.addPage();
    },
    done: (foot) => {
      drawFeet(doc, foot);
      doc.end();
      return ended;
    },
  };
};

const drawHeading = (doc: Doc, level: 1 | 2 | 3, text: string): void => {
  const size = HEADINGS[level];
  // A heading alone at the foot of a page says nothing.
  if (doc.y + size * 4 > doc.page.maxY()) doc.addPage();
  write(doc, `H${level}`, () => {
    doc.font(FACE.bold).fontSize(size);
    doc.text(text, MARGIN, doc.y + GAP, { width: width(doc) });
  });
  doc.y += GAP;
};

const drawList = (doc: Doc, items: readonly string[]): void => {
  const list = doc.struct('L');
  doc.addStructure(list);
  for (const item of items) {
    const element = doc.struct('LI', {}, () => {
      doc.font(FACE.plain).fontSize(BODY);
      doc.text(`–  ${item}`, MARGIN, doc.y, { width: width(doc), paragraphGap: 2 });
    });
    list.add(element);
    element.end();
  }
  list.end();
  doc.y += GAP;
};

const attach = (doc: Doc, files: PaperWish['attached'], date: Date): void => {
  for (const { name, bytes, type, about } of files) {
    doc.file(Buffer.from(bytes), {
      ...{ name, type, description: about, relationship: 'Data' },
      ...{ creationDate: date, modifiedDate: date },
    });
  }
};

const drawFeet = (doc: Doc, foot: (page: number, of: number) => string): void => {
  const { count } = doc.bufferedPageRange();
  for (let n = 0; n < count; n += 1) {
    doc.switchToPage(n);
    // Below the bottom margin pdfkit would start another page.
    doc.page.margins.bottom = 0;
    doc.markContent('Artifact', { type: 'Pagination' });
    doc.font(FACE.plain).fontSize(SMALL);
    doc.text(foot(n + 1, count), MARGIN, doc.page.height - MARGIN - FOOT / 2, { width: width(doc) });
    doc.endMarkedContent();
  }
};
