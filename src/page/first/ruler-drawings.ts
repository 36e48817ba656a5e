import { drawn } from '../show/element.ts';

/** Drawings of where to put the ruler, by the key that is measured. Lines of the bow are thin, the length to measure is thick. */
type Line = readonly [x1: number, y1: number, x2: number, y2: number];

const path = (d: string, role: string) => drawn('path', { d, class: role });
const line = ([x1, y1, x2, y2]: Line, role: string) => drawn('line', { x1, y1, x2, y2, class: role });
const label = (x: number, y: number, words: string, anchor = 'middle') =>
  drawn('text', { x, y, class: 'words', 'text-anchor': anchor }, words);

/** The length to be measured, with a short stop at either end. */
function measured([x1, y1, x2, y2]: Line): readonly SVGElement[] {
  const isUpright = x1 === x2;
  const stop = (x: number, y: number): SVGElement =>
    line(isUpright ? [x - 7, y, x + 7, y] : [x, y - 7, x, y + 7], 'measure');
  return [line([x1, y1, x2, y2], 'measure'), stop(x1, y1), stop(x2, y2)];
}

const NOCK = { x: 64, y: 104 };
const PEEP = { x: 104, y: 62 };
const PIN = { x: 268, y: 62 };

/** A bow at full draw from the side: limbs, string, arrow, peep and pin. */
function fullDraw(): readonly SVGElement[] {
  return [
    path('M222 104 C 206 84 214 60 206 40 C 198 22 176 14 156 8', 'bow'),
    path('M222 104 C 206 124 214 140 206 160 C 200 174 180 182 164 186', 'bow'),
    path(`M156 8 L ${PEEP.x} ${PEEP.y} L ${NOCK.x} ${NOCK.y} L 164 186`, 'string'),
    line([NOCK.x, NOCK.y, 262, NOCK.y], 'arrow'),
    path('M262 101 l 10 3 l -10 3 z', 'solid'),
    path('M68 103 l 8 -7 l 16 0 l 6 7 z', 'vane'),
    line([214, 84, PIN.x, 84], 'bow'),
    line([PIN.x, 84, PIN.x, PIN.y], 'bow'),
    drawn('circle', { cx: PIN.x, cy: PIN.y, r: 3.2, class: 'solid' }),
    drawn('circle', { cx: PEEP.x, cy: PEEP.y, r: 4, class: 'ring' }),
  ];
}

const DRAWINGS: Readonly<Record<string, () => readonly SVGElement[]>> = {
  'bow.peep_height': () => [
    ...fullDraw(),
    line([PEEP.x, PEEP.y, 134, PEEP.y], 'guide'),
    ...measured([128, PEEP.y, 128, NOCK.y]),
    label(136, 90, 'this high', 'start'),
  ],
  'sight.peep_to_pin': () => [
    ...fullDraw(),
    line([PEEP.x, PEEP.y, PEEP.x, 30], 'guide'),
    line([PIN.x, PIN.y, PIN.x, 30], 'guide'),
    ...measured([PEEP.x, 34, PIN.x, 34]),
    label(238, 26, 'this far'),
  ],
  'bow.draw_length': () => [
    ...fullDraw(),
    line([NOCK.x, NOCK.y, NOCK.x, 142], 'guide'),
    line([236, 104, 236, 142], 'guide'),
    ...measured([NOCK.x, 136, 236, 136]),
    label(150, 156, 'this far, and 1.75 in more'),
  ],
  'launch.speed': () => [
    line([20, 96, 116, 96], 'arrow'),
    path('M116 93 l 10 3 l -10 3 z', 'solid'),
    path('M24 95 l 8 -7 l 16 0 l 6 7 z', 'vane'),
    path('M168 126 L 168 48 M 209 126 L 209 48', 'bow'),
    path('M150 148 h 134 v -22 h -134 z', 'bow'),
    path('M160 48 h 16 M 201 48 h 16', 'bow'),
    path('M250 126 L 250 48 M 242 48 h 16', 'bow'),
    line([132, 96, 292, 96], 'guide'),
    ...measured([132, 96, 168, 96]),
    label(150, 178, 'over the chronograph'),
  ],
  'arrow.mass': () => [
    line([40, 84, 262, 84], 'arrow'),
    path('M262 81 l 10 3 l -10 3 z', 'solid'),
    path('M44 83 l 8 -7 l 16 0 l 6 7 z', 'vane'),
    path('M112 94 h 96 l 10 14 h -116 z', 'bow'),
    path('M92 108 h 136 v 38 h -136 z', 'bow'),
    drawn('rect', { x: 118, y: 116, width: 84, height: 22, class: 'measure-box' }),
    label(160, 132, 'grains'),
    label(160, 172, 'the whole arrow, as shot'),
  ],
  'arrow.diameter': () => [
    drawn('circle', { cx: 160, cy: 112, r: 34, class: 'bow' }),
    drawn('circle', { cx: 160, cy: 112, r: 22, class: 'guide' }),
    path('M126 30 v 112 M 194 30 v 112', 'bow'),
    path('M96 30 h 144 v 16 h -144 z', 'bow'),
    ...measured([126, 66, 194, 66]),
    label(160, 172, 'across the bare shaft'),
  ],
  'arrow.parts.vanes.height': () => [
    path('M30 140 h 260', 'arrow'),
    path('M70 138 L 106 70 L 190 70 L 240 138 z', 'vane'),
    line([190, 70, 270, 70], 'guide'),
    ...measured([258, 70, 258, 138]),
    label(250, 60, 'height', 'end'),
    ...measured([70, 160, 240, 160]),
    label(155, 178, 'length on the shaft (root chord)'),
    label(148, 62, 'length at the top (tip chord)'),
  ],
};

/** The drawing that shows how a key is measured, or null for a key without one. */
export function rulerDrawing(path: string): SVGSVGElement | null {
  const draw = DRAWINGS[path];
  if (draw === undefined) return null;
  return drawn('svg', { viewBox: '0 0 320 192', class: 'ruler', 'aria-hidden': 'true' }, draw());
}
