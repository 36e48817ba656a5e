import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a PDF draws, read back by another program: mm, origin top left, y down. */
interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly ReadLine[];
  /** Closed shapes that are filled and outlined. */
  readonly shapes: readonly ReadShape[];
  /** Level ones, and those that are turned. */
  readonly texts: readonly ReadText[];
  readonly turned: readonly ReadText[];
}

interface ReadLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly stroke: number;
}

/** The upright rectangle around the corners of a shape. */
interface ReadShape {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A run of text by its baseline's start. */
interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  /** Of its baseline, degrees clockwise as the page is seen. */
  readonly rotation: number;
}

export interface ReadPdf {
  readonly title: string;
  readonly printScaling: string;
  readonly pages: readonly ReadPage[];
}

type Matrix = readonly [number, number, number, number, number, number];
const MM = 25.4 / 72;

const times = ([a, b, c, d, e, f]: Matrix, [m, n, o, p, q, r]: Matrix): Matrix => [
  a * m + c * n,
  b * m + d * n,
  a * o + c * p,
  b * o + d * p,
  a * q + c * r + e,
  b * q + d * r + f,
];

/** Read a PDF with pdfjs: pages, straight lines of one segment, texts, title and print scaling. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const document = await task.promise;
  const { info } = await document.getMetadata();
  const preferences = await document.getViewerPreferences();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({ width: width * MM, height: height * MM, ...drawn(fnArray, argsArray, height) });
  }
  await task.destroy();
  return {
    title: String(Object(info)['Title']),
    printScaling: String(Object(preferences)['PrintScaling']),
    pages,
  };
}

function drawn(codes: readonly number[], args: readonly unknown[], height: number) {
  const lines: ReadLine[] = [];
  const shapes: ReadShape[] = [];
  const texts: ReadText[] = [];
  const saved: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  let start: Matrix = now;
  let size = 0;
  let stroke = 0;
  for (const [i, code] of codes.entries()) {
    const given = list(args[i]);
    if (code === OPS.save || code === OPS.paintFormXObjectBegin) saved.push(now);
    else if (code === OPS.restore || code === OPS.paintFormXObjectEnd) now = saved.pop() ?? now;
    else if (code === OPS.transform) now = times(now, matrix(given));
    else if (code === OPS.setLineWidth) stroke = Number(given[0]) * MM;
    else if (code === OPS.setTextMatrix) start = matrix(list(given[0]));
    else if (code === OPS.setFont) size = Number(given[1]);
    else if (code === OPS.showText) {
      const at = times(now, start);
      const glyphs = list(given[0]).map((glyph) => Object(glyph));
      texts.push({
        text: glyphs.map((glyph) => String(glyph['unicode'] ?? '')).join(''),
        x: at[4] * MM,
        y: (height - at[5]) * MM,
        width: (glyphs.reduce((sum, glyph) => sum + Number(glyph['width'] ?? 0), 0) / 1000) * size * MM,
        size: size * MM,
        rotation: (Math.atan2(-at[1], at[0]) * 180) / Math.PI,
      });
    } else if (code === OPS.constructPath && given[0] === OPS.fillStroke) {
      const corners = cornersOf(list(list(given[1])[0]).map(Number)).map(([x, y]) =>
        times(now, [1, 0, 0, 1, x, y]),
      );
      const xs = corners.map((corner) => corner[4] * MM);
      const ys = corners.map((corner) => (height - corner[5]) * MM);
      shapes.push({
        left: Math.min(...xs),
        right: Math.max(...xs),
        top: Math.min(...ys),
        bottom: Math.max(...ys),
      });
    } else if (code === OPS.constructPath && given[0] === OPS.stroke) {
      for (const [x1, y1, x2, y2] of segmentsOf(list(list(given[1])[0]).map(Number))) {
        const a = times(now, [1, 0, 0, 1, x1, y1]);
        const b = times(now, [1, 0, 0, 1, x2, y2]);
        lines.push({
          x1: a[4] * MM,
          y1: (height - a[5]) * MM,
          x2: b[4] * MM,
          y2: (height - b[5]) * MM,
          stroke,
        });
      }
    }
  }
  const isLevel = ({ rotation }: ReadText) => rotation === 0;
  return { lines, shapes, texts: texts.filter(isLevel), turned: texts.filter((text) => !isLevel(text)) };
}

/** The points of a path of straight segments: a code, then its point; the code that closes it has none. */
function cornersOf(path: readonly number[]): readonly (readonly [number, number])[] {
  const corners: (readonly [number, number])[] = [];
  for (let i = 0; i + 2 < path.length && (path[i] === 0 || path[i] === 1); i += 3)
    corners.push([path[i + 1] ?? Number.NaN, path[i + 2] ?? Number.NaN]);
  return corners;
}

/** The parts of a path that are one straight segment each: `0 x y 1 x y`, not gone on with nor closed. */
function segmentsOf(path: readonly number[]): readonly (readonly [number, number, number, number])[] {
  const segments: (readonly [number, number, number, number])[] = [];
  for (let i = 0; i < path.length; ) {
    const [from, x1 = 0, y1 = 0, to, x2 = 0, y2 = 0, next = 0] = path.slice(i, i + 7);
    if (from !== 0 || to !== 1 || next !== 0) return segments;
    segments.push([x1, y1, x2, y2]);
    i += 6;
  }
  return segments;
}

/** pdfjs hands over arrays, typed arrays and, between its threads, plain objects with numbered keys. */
const list = (value: unknown): readonly unknown[] =>
  Array.isArray(value) ? value : Object.values(Object(value));

function matrix(values: readonly unknown[]): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = values.map(Number);
  return [a, b, c, d, e, f];
}
