import { drawn, element, refill } from '../show/element.ts';

/** A hit on the face, mm from its centre: right and high positive. */
export interface FaceHit {
  readonly right: number;
  readonly high: number;
}

export interface TargetFace {
  readonly view: HTMLElement;
  readonly hits: () => readonly FaceHit[];
  readonly clear: () => void;
  readonly undo: () => void;
  readonly remove: () => void;
  /** @param diameter of the face, mm */
  readonly resize: (diameter: number) => void;
}

/** Rings of a face: ten of one width is what most faces have (common practice, no source). */
const RINGS = 10;
/** Room about the face for arrows that missed it, as a part of its diameter. */
const ABOUT = 1.3;
/** A finger this near to a hit, as a part of the diameter, means the hit. */
const REACH = 0.06;
/** One press of an arrow key, mm. */
const NUDGE = 2;

const sideWords = (mm: number, [more, less]: readonly [string, string]): string =>
  `${Math.round(Math.abs(mm))} mm ${mm < 0 ? less : more}`;
const placeWords = ({ right, high }: FaceHit): string =>
  `${sideWords(right, ['right', 'left'])}, ${sideWords(high, ['high', 'low'])}`;

/** A face to scale on which hits are tapped, dragged and taken away, with a finger, a pointer or the keys. */
export function targetFace(changed: () => void): TargetFace {
  let diameter = 400;
  let hits: readonly FaceHit[] = [];
  let before: readonly (readonly FaceHit[])[] = [];
  let selected = -1;
  const said = element('p', { class: 'hint', role: 'status' });
  const box = element('div', {
    class: 'face',
    role: 'application',
    tabindex: 0,
    'aria-label':
      'Target face. Tap where an arrow hit. Keys: Enter adds an arrow in the middle, arrow keys move it, Delete removes it.',
  });
  const remember = (): void => {
    before = [...before, hits];
  };
  const put = (next: readonly FaceHit[], chosen: number): void => {
    hits = next;
    selected = chosen;
    draw();
    changed();
  };
  const draw = (): void => {
    const half = (diameter * ABOUT) / 2;
    const size = diameter / 40;
    refill(
      box,
      drawn(
        'svg',
        { viewBox: `${-half} ${-half} ${2 * half} ${2 * half}`, 'aria-hidden': 'true' },
        Array.from({ length: RINGS }, (_, i) =>
          drawn('circle', {
            r: (diameter / 2) * (1 - i / RINGS),
            class: i % 2 === 0 ? 'ring even' : 'ring odd',
          }),
        ),
        drawn('path', { d: `M${-size} 0 H${size} M0 ${-size} V${size}`, class: 'centre' }),
        hits.map(({ right, high }, i) =>
          drawn('circle', { cx: right, cy: -high, r: size, class: i === selected ? 'hit chosen' : 'hit' }),
        ),
      ),
    );
    const hit = hits[selected];
    const count = `${hits.length} ${hits.length === 1 ? 'arrow' : 'arrows'}`;
    said.textContent = hit === undefined ? `${count}.` : `${count}; the chosen one ${placeWords(hit)}.`;
  };
  const at = ({ clientX, clientY }: PointerEvent): FaceHit => {
    const { left, top, width, height } = box.getBoundingClientRect();
    const span = diameter * ABOUT;
    return { right: ((clientX - left) / width - 0.5) * span, high: (0.5 - (clientY - top) / height) * span };
  };
  let isDragging = false;
  box.addEventListener('pointerdown', (event) => {
    const place = at(event);
    const off = (hit: FaceHit): number => Math.hypot(hit.right - place.right, hit.high - place.high);
    const near = hits.findIndex((hit) => off(hit) < REACH * diameter);
    remember();
    isDragging = true;
    box.setPointerCapture(event.pointerId);
    if (near === -1) put([...hits, place], hits.length);
    else put(hits, near);
  });
  box.addEventListener('pointermove', (event) => {
    if (isDragging && selected !== -1) put(hits.with(selected, at(event)), selected);
  });
  box.addEventListener('pointerup', () => {
    isDragging = false;
  });
  const remove = (): void => {
    if (hits[selected] === undefined) return;
    remember();
    put(hits.toSpliced(selected, 1), Math.min(selected, hits.length - 2));
  };
  const nudge = (right: number, high: number): void => {
    const hit = hits[selected];
    if (hit === undefined) return;
    remember();
    put(hits.with(selected, { right: hit.right + right, high: hit.high + high }), selected);
  };
  const KEYS: Readonly<Record<string, () => void>> = {
    Enter: () => {
      remember();
      put([...hits, { right: 0, high: 0 }], hits.length);
    },
    Delete: remove,
    Backspace: remove,
    ArrowLeft: () => nudge(-NUDGE, 0),
    ArrowRight: () => nudge(NUDGE, 0),
    ArrowUp: () => nudge(0, NUDGE),
    ArrowDown: () => nudge(0, -NUDGE),
  };
  box.addEventListener('keydown', (event) => {
    const act = KEYS[event.key];
    if (act === undefined) return;
    event.preventDefault();
    act();
  });
  draw();
  return {
    view: element('div', {}, box, said),
    hits: () => hits,
    clear: () => {
      before = [];
      put([], -1);
    },
    undo: () => {
      const last = before.at(-1);
      if (last === undefined) return;
      before = before.slice(0, -1);
      put(last, last.length - 1);
    },
    remove,
    resize: (next) => {
      diameter = next;
      draw();
    },
  };
}
