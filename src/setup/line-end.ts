/** What ends a line, in YAML and on a terminal. */
export const LINE_END = /[\n\r\u0085\u2028\u2029]+/;
