/** One module of the program as a function, in the way of CommonJS. `here` is the address of the file that was started. */
export type Part = (
  exports: object,
  load: (name: string) => unknown,
  module: { exports: object },
  later: (name: string) => Promise<unknown>,
  here: string,
) => void;
export type Parts = Readonly<Record<string, Part>>;

/**
 * Starts the program: evaluates the modules that the build made into functions, each when it is first asked for. Written into the
 * program's one script, so it may use nothing from outside itself.
 *
 * @param ofNode loads the modules of Node
 * @param here   the address of the file to start again as a thread
 * @param more   modules that `parts` does not hold, for when one of them is asked for
 */
export function boot(
  parts: Parts,
  ofNode: (name: string) => unknown,
  here: string,
  more: () => Parts = () => ({}),
): void {
  const made = new Map<string, { exports: object }>();
  let rest: Parts | undefined;
  const others = (): Parts => {
    rest ??= more();
    return rest;
  };
  const load = (name: string): unknown => {
    const known = made.get(name);
    if (known !== undefined) return known.exports;
    const part = parts[name] ?? (name.startsWith('./') ? others()[name] : undefined);
    if (part === undefined) return ofNode(name);
    const module = { exports: {} };
    made.set(name, module);
    part(module.exports, load, module, later, here);
    return module.exports;
  };
  const later = async (name: string): Promise<unknown> => load(name);
  load('./role.js');
}
