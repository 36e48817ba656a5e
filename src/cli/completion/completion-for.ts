import type { Command } from 'commander';
import { bashCompletion } from './bash.ts';
import { type ProgramWords, programWords } from './command-words.ts';
import { fishCompletion } from './fish.ts';
import type { Shell } from './shells.ts';
import { zshCompletion } from './zsh.ts';

const SCRIPTS: Readonly<Record<Shell, (words: ProgramWords) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};

/** The script by which a shell completes what this command line accepts. */
export const completionFor = (shell: Shell, program: Command): string =>
  SCRIPTS[shell](programWords(program));
