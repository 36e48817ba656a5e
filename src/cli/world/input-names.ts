/** Names that systems have for standard input, which may be a socket that cannot be opened by its name. */
export const INPUT_NAMES = ['-', '/dev/stdin', '/dev/fd/0', '/proc/self/fd/0'];
