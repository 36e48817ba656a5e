import font from '../../documents/fonts/sans-condensed.ttf';
import boldFont from '../../documents/fonts/sans-condensed-bold.ttf';
import { renderPdf } from '../../documents/render/pdf.ts';
import type { PaperOrder } from '../answers/orders.ts';

/** A document as the bytes of a PDF: those that the command line writes. */
export const pdfOf = ({ drawing, title, dated }: PaperOrder): Promise<Uint8Array> =>
  renderPdf(drawing, { font, boldFont, title, createdAt: new Date(dated) });
