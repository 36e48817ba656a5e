import { button, type Child, element, refill } from '../show/element.ts';
import type { Workbench } from '../text/workbench.ts';

/** The places of the page, in the order of a person with a new bow. */
const AREAS: readonly { readonly name: string; readonly words: string }[] = [
  { name: 'bow', words: 'Bow' },
  { name: 'range', words: 'Range' },
  { name: 'answers', words: 'Answers' },
  { name: 'keep', words: 'Keep' },
];

/** A message stays this long, ms: time to read two sentences. */
const SAID_FOR = 7000;
const WIDE = '(min-width: 64rem)';

/** What stands around everything: the name of the setup, the ways to its places, messages. */
export function shell(bench: Workbench) {
  const name = element('h1', { class: 'setup-name' }, 'quillpath');
  const state = element('p', { class: 'state', role: 'status' });
  const message = element('div', { class: 'message', role: 'status', 'aria-live': 'polite' });
  const main = element('main', { id: 'main', tabindex: -1 });
  const [undo, redo] = [
    button('Undo', bench.undo, { class: 'second' }),
    button('Redo', bench.redo, { class: 'second' }),
  ];
  const links = AREAS.map(({ name: area, words }) => element('a', { href: `#${area}` }, words));
  const gone: (() => void)[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;

  const area = (): string => main.getAttribute('data-area') ?? 'first';
  const show = (): void => {
    const before = area();
    const wanted = location.hash.replace(/^#/, '');
    const known = wanted === 'first' || AREAS.some((each) => each.name === wanted);
    main.setAttribute('data-area', known ? wanted : area());
    for (const link of links) {
      if (link.getAttribute('href') === `#${area()}`) link.setAttribute('aria-current', 'page');
      else link.removeAttribute('aria-current');
    }
    for (const seen of gone) seen();
    if (before !== area()) scrollTo(0, 0);
  };
  addEventListener('hashchange', show);
  matchMedia(WIDE).addEventListener('change', show);
  const steps = (): void => {
    const { before, after } = bench.open.value().history;
    undo.disabled = before.length === 0;
    redo.disabled = after.length === 0;
  };
  bench.open.watch(steps);
  steps();
  document.addEventListener('keydown', (event) => {
    const isTyping = event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement;
    if (isTyping || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    if (event.shiftKey) bench.redo();
    else bench.undo();
  });
  return {
    area,
    isWide: () => matchMedia(WIDE).matches,
    go: (to: string) => {
      location.hash = to;
      show();
    },
    whenGone: (seen: () => void) => {
      gone.push(seen);
    },
    say: (words: string) => {
      message.textContent = words;
      clearTimeout(timer);
      timer = setTimeout(() => refill(message), SAID_FOR);
    },
    title: (title: string, problems: number, hasSound: boolean) => {
      name.textContent = title;
      document.title = `${title} · quillpath`;
      const kept = hasSound ? ' Answers are for the last version without a problem.' : '';
      state.textContent =
        problems === 0 || area() === 'first'
          ? ''
          : `${problems === 1 ? 'One thing' : `${problems} things`} to put right under Bow.${kept}`;
    },
    fill: (place: HTMLElement, areas: readonly Child[]) => {
      refill(main, areas);
      refill(
        place,
        element(
          'a',
          {
            class: 'skip',
            href: '#main',
            onclick: (event: Event) => {
              event.preventDefault();
              main.focus();
            },
          },
          'To the content',
        ),
        element(
          'header',
          {},
          element('div', { class: 'head-line' }, name, element('div', { class: 'steps' }, undo, redo)),
          element('nav', { 'aria-label': 'Places of the page' }, links),
          state,
        ),
        main,
        message,
      );
      show();
    },
  };
}
