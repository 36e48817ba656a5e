/** What was said to a question; what was not said is left to its defaults. */
export type Given = Readonly<Record<string, Said | number | readonly string[]>>;

/** What one field says: words, a tick, or a text out of a file. */
export type Said = string | boolean | { readonly name: string; readonly text: string };
