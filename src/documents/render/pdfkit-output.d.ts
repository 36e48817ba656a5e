/** @types/pdfkit 0.17.6 does not know this entry point of pdfkit 0.20. */
declare module 'pdfkit/output' {
  export function toBytes(document: PDFKit.PDFDocument): Promise<Uint8Array>;
}
