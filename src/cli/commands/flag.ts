/** The name of an option as it is typed: `nockTravel` is `--nock-travel`. */
export const flagOf = (name: string): string =>
  `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
