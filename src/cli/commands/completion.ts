import { Argument, Command } from 'commander';
import { SHELLS, type Shell } from '../completion/shells.ts';
import type { Io } from '../io.ts';
import type { FileCommand } from './file-command.ts';
import { examples } from './shared-options.ts';

/** Where each shell looks, by its own manual. */
const MORE = `
Where to put it:
  bash: this line at the end of ~/.bashrc
    eval "$(quillpath completion bash)"
  zsh: these lines at the end of ~/.zshrc
    autoload -Uz compinit && compinit
    eval "$(quillpath completion zsh)"
  fish: the script as a file, ~/.config/fish/completions/quillpath.fish
    quillpath completion fish > ~/.config/fish/completions/quillpath.fish
`;
const EXAMPLES = [['in this shell alone, to try it', 'completion bash > q.bash; source q.bash']] as const;

/** @param wholeProgram the command line with all its commands, which are what a shell completes */
export const completionCommand = (wholeProgram: (io: Io) => Promise<Command>): FileCommand => ({
  examples: EXAMPLES,
  more: MORE,
  make: (io) =>
    new Command('completion')
      .description('Print a script that lets your shell complete commands and options at the tab key.')
      .addArgument(new Argument('<shell>', 'the shell that you use').choices(SHELLS))
      .addHelpText('after', MORE)
      .addHelpText('after', examples(EXAMPLES))
      .action(async (shell: Shell) => {
        const { completionFor } = await import('../completion/completion-for.ts');
        io.out(completionFor(shell, await wholeProgram(io)));
      }),
});
