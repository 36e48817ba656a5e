/** What may stand inside an element. Words become text nodes, so nothing that a person typed is ever read as markup. */
export type Child = Node | string | number | null | undefined | false | readonly Child[];

/** Attributes by name, properties of state (`value`, `checked`, `disabled`), and listeners under `on` and the event's name. */
type Attributes = Readonly<Record<string, string | number | boolean | undefined | ((event: never) => void)>>;

const PROPERTIES: ReadonlySet<string> = new Set([
  'value',
  'checked',
  'disabled',
  'hidden',
  'open',
  'selected',
]);

function dress(made: HTMLElement | SVGElement, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    if (typeof value === 'function')
      made.addEventListener(name.replace(/^on/, ''), value as unknown as EventListener);
    else if (PROPERTIES.has(name)) Reflect.set(made, name, value);
    else made.setAttribute(name, value === true ? '' : String(value));
  }
}

function fill(made: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    if (isList(child)) fill(made, child);
    else made.append(child instanceof Node ? child : String(child));
  }
}

const isList = (child: Child): child is readonly Child[] => Array.isArray(child);

/** An element of the page with its attributes and what stands in it. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  fill(made, children);
  dress(made, attributes);
  return made;
}

/** An element of a drawing. */
export function drawn<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[Tag] {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  fill(made, children);
  dress(made, attributes);
  return made;
}

/** Put other things into an element in place of what it held. */
export function refill(place: Element, ...children: readonly Child[]): void {
  place.replaceChildren();
  fill(place, children);
}

/** A button with words on it. */
export const button = (words: string, press: () => void, attributes: Attributes = {}): HTMLButtonElement =>
  element('button', { type: 'button', onclick: press, ...attributes }, words);

let count = 0;
/** A name that no other element of the page has. */
export function freshId(start: string): string {
  count += 1;
  return `${start}-${count}`;
}
