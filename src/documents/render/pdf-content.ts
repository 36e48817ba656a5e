/** pdfkit's document, which is drawn on page by page. */
export type Pen = PDFKit.PDFDocument;

/** Points in a millimetre: 72 to the inch of 25.4 mm, both by definition. */
const POINTS_PER_MM = 72 / 25.4;
/** Decimals of a coordinate in mm, as in an SVG: a tick is within 5e-5 mm of its mark, and no engine's last bit shows. */
const DECIMALS = 4;
const PER_MM = 10 ** DECIMALS;
export const points = (mm: number): number => (Math.round(mm * PER_MM) / PER_MM) * POINTS_PER_MM;

/** A number in the words of a PDF, rounded to a millionth as pdfkit does. */
export const operand = (value: number): number => Math.round(value * 1e6) / 1e6;

/** What `draw` would write on the page, as one text instead. */
export function contentOf(pen: Pen, draw: () => void): string {
  const { addContent } = pen;
  const pieces: string[] = [];
  pen.addContent = (piece: string) => {
    pieces.push(piece);
    return pen;
  };
  try {
    draw();
  } finally {
    pen.addContent = addContent;
  }
  return pieces.join('\n');
}
