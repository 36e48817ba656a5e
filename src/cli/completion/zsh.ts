import type { ArgumentWords, CommandWords, Expected, OptionWords, ProgramWords } from './command-words.ts';
import { quoted } from './quoted.ts';

/** Brackets and colons divide the parts of what _arguments reads. */
const escaped = (text: string): string => text.replace(/[\\[\]:]/g, String.raw`\$&`);

const actionOf = (expected: Expected): string => {
  if (expected === 'file') return '_files';
  return expected === 'text' ? ' ' : `(${expected.join(' ')})`;
};

function optionSpecs({ long, short, what, value }: OptionWords): readonly string[] {
  const rest = `[${escaped(what)}]${value === null ? '' : `:${escaped(value.of)}:${actionOf(value.expected)}`}`;
  // What only the archer knows may be written several times, as places and builds are.
  const repeats = value?.expected === 'text' ? '*' : '';
  if (short === null) return [`${repeats}${long}${value === null ? '' : '='}${rest}`];
  return [`(${short} ${long})${long}${rest}`, `(${short} ${long})${short}${rest}`];
}

const argumentSpec = ({ of, expected, repeats }: ArgumentWords, i: number): string =>
  `${repeats ? '*' : i + 1}:${escaped(of)}:${actionOf(expected)}`;

const lines = (specs: readonly string[], indent: string): string =>
  specs.map((spec) => `${indent}${quoted(spec)}`).join(' \\\n');

const commandBranch = ({ name, options, arguments: places }: CommandWords): string =>
  `    ${name})
      _arguments \\
${lines([...options.flatMap(optionSpecs), ...places.map(argumentSpec)], '        ')}
      ;;`;

/** Completion for zsh, by its own `_arguments`; it works as a file in a folder of $fpath, and sourced after compinit. */
export const zshCompletion = ({ commands, options }: ProgramWords): string => `#compdef quillpath
# What zsh completes after "quillpath". Made by: quillpath completion zsh
_quillpath() {
  local curcontext=$curcontext state
  local -a line commands
  local -A opt_args
  commands=(
${commands.map(({ name, what }) => `    ${quoted(`${name}:${escaped(what)}`)}`).join('\n')}
  )
  _arguments -C \\
${lines(options.flatMap(optionSpecs), '    ')} \\
    '1:command:->command' \\
    '*::argument:->argument' && return 0
  if [[ $state == command ]]; then
    _describe -t commands command commands
    return
  fi
  [[ $state == argument ]] || return 1
  case $words[1] in
${commands.map(commandBranch).join('\n')}
  esac
}
if [[ $funcstack[1] == _quillpath ]]; then
  _quillpath "$@"
else
  compdef _quillpath quillpath
fi
`;
