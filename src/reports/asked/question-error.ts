/** How a door writes the name of an option: `--from` on a command line, the label of a field on a page. */
export type Naming = (option: string) => string;

/** What was asked may be as long as a command line; characters. */
const LONGEST = 400;
const BEGINNING = 240;
const END = 120;

/**
 * Something that was asked and cannot be answered as asked: what is wrong, and what to write instead. Names of options stand in
 * braces in both texts ("{from} is farther than {to}"), so that each door can write them in its own way.
 */
export class QuestionError extends Error {
  readonly code = 'command-line';
  readonly #wrong: string;
  readonly #write: string;

  /**
   * @param wrong what is wrong, without a full stop
   * @param write what to write instead, a whole sentence
   */
  constructor(wrong: string, write: string) {
    const short = wrong.length <= LONGEST ? wrong : `${wrong.slice(0, BEGINNING)} … ${wrong.slice(-END)}`;
    super(named(`${short}. ${write}`, (option) => option));
    this.name = 'QuestionError';
    this.#wrong = short;
    this.#write = write;
  }

  /** The message with the options named as a door names them. */
  said(naming: Naming): string {
    return named(`${this.#wrong}. ${this.#write}`, naming);
  }
}

/** A text with the options in it named as a door names them. */
export const named = (text: string, naming: Naming): string =>
  text.replace(/\{([a-zA-Z]+)\}/g, (_, option: string) => naming(option));
