/** One file of the program as a function, in the way of CommonJS: asked for by name, and told how others are loaded. */
export type Part = (
  exports: object,
  load: (name: string) => object,
  module: { exports: object },
  later: (name: string) => Promise<object>,
) => void;
export type Parts = Readonly<Record<string, Part>>;

/** What the page may ask of the loader. */
export interface Packs {
  /** Loads the files that a part of the program needs, once. */
  readonly fetch: (pack: string) => Promise<void>;
  /** All that is loaded, as the text of a script that starts another file of it: for a worker, where nothing can be fetched. */
  readonly source: (entry: string) => string;
  /** Called by a pack when it arrives. */
  readonly add: (parts: Parts) => void;
}

declare global {
  var quillpathPacks: Packs;
}

/**
 * Starts the program. Module scripts, `fetch` and workers by address all fail in a page that was opened from a disk, so the
 * bundler's modules are wrapped as functions, and what is needed later comes as a further classic script.
 *
 * This function is also sent to workers as text: it may use nothing from outside itself.
 *
 * @param packOf the pack that each file not in `first` belongs to
 */
export function boot(first: Parts, packOf: Readonly<Record<string, string>>, entry: string): void {
  const parts: Record<string, Part> = { ...first };
  const made = new Map<string, { exports: object }>();
  const arriving = new Map<string, Promise<void>>();
  const load = (name: string): object => {
    const known = made.get(name);
    if (known !== undefined) return known.exports;
    const part = parts[name];
    if (part === undefined) throw new Error(`${name} is not loaded`);
    const module = { exports: {} };
    made.set(name, module);
    part(module.exports, load, module, later);
    return module.exports;
  };
  const later = async (name: string): Promise<object> => {
    const pack = packOf[name];
    if (parts[name] === undefined && pack !== undefined) await fetchPack(pack);
    return load(name);
  };
  const fetchPack = (pack: string): Promise<void> => {
    const underway = arriving.get(pack) ?? insert(pack);
    arriving.set(pack, underway);
    return underway;
  };
  const insert = (pack: string): Promise<void> =>
    new Promise((resolve, reject) => {
      // The single file holds its packs as inert text.
      const inert = document.getElementById(`pack-${pack}`)?.textContent;
      const script = document.createElement('script');
      script.src =
        inert === undefined || inert === null
          ? `${pack}.js`
          : URL.createObjectURL(new Blob([inert], { type: 'text/javascript' }));
      script.onload = () => resolve();
      script.onerror = () => {
        arriving.delete(pack);
        reject(new Error(`${pack}.js could not be loaded. Is all of the folder there?`));
      };
      document.head.append(script);
    });
  globalThis.quillpathPacks = {
    fetch: fetchPack,
    source: (other) => {
      const texts = Object.entries(parts).map(([name, part]) => `${JSON.stringify(name)}:${part}`);
      return `(${boot})({${texts.join(',')}},{},${JSON.stringify(other)})`;
    },
    add: (added) => {
      Object.assign(parts, added);
    },
  };
  if (typeof document !== 'undefined') void fetchPack('core');
  load(entry);
}
