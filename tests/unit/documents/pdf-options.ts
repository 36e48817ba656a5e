import { typeface } from '../../cli/typeface.ts';

/** What a test gives a PDF besides its drawing. */
export const pdfOptions = async (title: string) => ({
  ...(await typeface()),
  title,
  createdAt: new Date(Date.UTC(2026, 10, 25)),
});
