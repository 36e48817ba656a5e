/** One module of the program as a function, in the way of CommonJS. `here` is the address of the file that was started. */
type Part = (
  exports: object,
  load: (name: string) => unknown,
  module: { exports: object },
  later: (name: string) => Promise<unknown>,
  here: string,
) => void;

/**
 * Starts the program: evaluates the modules that the build made into functions, each when it is first asked for. Written into the
 * program's one script, so it may use nothing from outside itself.
 *
 * @param ofNode loads the modules of Node
 * @param here   the address of the file to start again as a thread
 */
export function boot(
  parts: Readonly<Record<string, Part>>,
  ofNode: (name: string) => unknown,
  here: string,
): void {
  const made = new Map<string, { exports: object }>();
  const load = (name: string): unknown => {
    const known = made.get(name);
    if (known !== undefined) return known.exports;
    const part = parts[name];
    if (part === undefined) return ofNode(name);
    const module = { exports: {} };
    made.set(name, module);
    part(module.exports, load, module, later, here);
    return module.exports;
  };
  const later = async (name: string): Promise<unknown> => load(name);
  load('./role.js');
}
