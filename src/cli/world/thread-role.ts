/** What the program hands to a thread of its own, which starts with the same file. */
export const THREAD = 'a thread of quillpath';
