/** pdfkit breaks lines with a table of all scripts; documents break their own lines. */
// biome-ignore lint/style/noDefaultExport: the package that this stands for has one
export default class {
  constructor() {
    throw new Error('lines are broken before they are drawn');
  }
}
