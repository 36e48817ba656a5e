import type { Drawing } from '../../documents/page/drawing.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from '../world/command-line-error.ts';

/**
 * The kind of file a name asks for.
 * @param example a name without its ending, for the advice
 * @throws CommandLineError for any other ending
 */
export function drawingFormat(path: string, example: string): 'pdf' | 'svg' {
  const ending = /\.(pdf|svg)$/i.exec(path)?.[1]?.toLowerCase();
  if (ending === 'pdf' || ending === 'svg') return ending;
  throw new CommandLineError(
    path.trim() === '' ? '--out names no file' : `--out: ${path} is neither a .pdf nor an .svg file`,
    `Write --out ${example}.pdf or --out ${example}.svg.`,
  );
}

/**
 * Write a drawing to a name of sound ending, and give the name of the file.
 * @throws CommandLineError for an SVG of more than one page: one file appears whole, or none
 */
export async function writeDrawing(
  io: Io,
  path: string,
  drawing: Drawing,
  { title, madeAt }: { readonly title: string; readonly madeAt: Date },
): Promise<readonly string[]> {
  if (/\.pdf$/i.test(path)) {
    const { renderPdf } = await import('../../documents/render/pdf.ts');
    const onLacking = (characters: readonly string[]) =>
      io.err(`The typeface of ${path} has no ${characters.join(' ')}; boxes are printed instead.\n`);
    const options = { ...(await io.fonts()), title, createdAt: madeAt, onLacking };
    io.writeWhole(path, await renderPdf(drawing, options));
    return [path];
  }
  const [page, ...more] = drawing.pages;
  if (page === undefined || more.length > 0)
    throw new CommandLineError(
      `--out: this needs ${drawing.pages.length} pages, but an SVG file holds only one`,
      'Write a .pdf, or ask for fewer copies, neighbours or rows.',
    );
  const { renderSvg } = await import('../../documents/render/svg.ts');
  io.writeWhole(path, renderSvg(page, { title }));
  return [path];
}
