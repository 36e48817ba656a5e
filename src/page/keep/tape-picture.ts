import type { Drawing } from '../../quillpath.ts';
import { pageNode } from '../show/drawing-nodes.ts';
import { element, freshId, refill } from '../show/element.ts';

const KEY = 'quillpath-screen';
/** Screens whose millimetre is a third off are not seen. */
const RANGE = { least: 0.6, most: 1.6, step: 0.005 } as const;

/** How many millimetres of the page's own make one on this screen; remembered for the device. */
function rememberedScale(): number {
  try {
    const kept = Number(localStorage.getItem(KEY));
    return kept >= RANGE.least && kept <= RANGE.most ? kept : 1;
  } catch {
    return 1;
  }
}

function remember(scale: number): void {
  try {
    localStorage.setItem(KEY, String(scale));
  } catch {
    // Without a store the next visit begins with the screen's own word.
  }
}

/** The sheet at the size of the paper, with a bar to lay a ruler on and a slider until it fits. */
export function tapePicture(sheet: Drawing, title: string): HTMLElement {
  let scale = rememberedScale();
  const box = element('div', {
    class: 'sheet-box',
    tabindex: 0,
    role: 'region',
    'aria-label': 'The tape at true size',
  });
  const bar = element('div', { class: 'check-bar', 'aria-hidden': 'true' });
  const id = freshId('scale');
  const draw = (): void => {
    bar.style.width = `${50 * scale}mm`;
    refill(
      box,
      sheet.pages.map((page) => pageNode(page, title, scale)),
    );
  };
  const slider = element('input', {
    id,
    type: 'range',
    min: RANGE.least,
    max: RANGE.most,
    step: RANGE.step,
    oninput: () => {
      scale = Number(slider.value);
      remember(scale);
      draw();
    },
  });
  slider.value = String(scale);
  draw();
  return element(
    'div',
    { class: 'true-size' },
    element('label', { for: id }, 'Lay a ruler on this bar and slide until it is 50 mm long'),
    bar,
    slider,
    box,
  );
}
