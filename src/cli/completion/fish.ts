import type { ArgumentWords, CommandWords, Expected, OptionWords, ProgramWords } from './command-words.ts';

/** A text as one word of fish: in single quotes only the quote and the backslash have a meaning. */
const quoted = (text: string): string => `'${text.replace(/[\\']/g, String.raw`\$&`)}'`;

/** What is offered in a place: files, a few words, or nothing that fish could know. */
const offered = (expected: Expected): string => {
  if (expected === 'file') return ' -F';
  return expected === 'text' ? '' : ` -a ${quoted(expected.join(' '))}`;
};

/** A value is required (-r), and unless it is a file, files are not offered for it (-x). */
const valueFlags = (expected: Expected): string =>
  `${expected === 'file' ? ' -r' : ' -x'}${offered(expected)}`;

function optionLine(condition: string, { long, short, what, value }: OptionWords): string {
  const names = ` -l ${long.slice(2)}${short === null ? '' : ` -s ${short.slice(1)}`}`;
  const flags = value === null ? '' : valueFlags(value.expected);
  return `complete -c quillpath -n ${quoted(condition)}${names}${flags} -d ${quoted(what)}`;
}

function placeLine(
  command: CommandWords,
  { expected, repeats }: ArgumentWords,
  i: number,
): readonly string[] {
  if (expected === 'text') return [];
  const valued = command.options.flatMap(({ long, value }) => (value === null ? [] : [long]));
  const place = [repeats ? 'or_later' : 'exactly', i + 1, ...valued].join(' ');
  const condition = `__quillpath_asks ${command.name}; and __quillpath_place ${place}`;
  return [`complete -c quillpath -n ${quoted(condition)}${offered(expected)}`];
}

const commandLines = (command: CommandWords): readonly string[] => [
  ...command.options.map((option) => optionLine(`__quillpath_asks ${command.name}`, option)),
  ...command.arguments.flatMap((argument, i) => placeLine(command, argument, i)),
];

/** Completion for fish, by its own `complete`. */
export const fishCompletion = ({ commands, options }: ProgramWords): string =>
  `# What fish completes after "quillpath". Made by: quillpath completion fish
function __quillpath_first
    test (count (commandline -opc)) -eq 1
end
function __quillpath_asks -a command
    set -l words (commandline -opc)
    test (count $words) -ge 2; and test $words[2] = $command
end
# Whether so many words are there that are neither options nor values of options, this one included.
function __quillpath_place -a how number
    set -l words (commandline -opc)
    set -l valued $argv[3..-1]
    set -l place 1
    set -l skip 0
    for word in $words[3..-1]
        if test $skip -eq 1
            set skip 0
        else if contains -- $word $valued
            set skip 1
        else if not string match -q -- '-*' $word
            set place (math $place + 1)
        end
    end
    test $place -eq $number; or begin
        test $how = or_later; and test $place -gt $number
    end
end
complete -c quillpath -f
${[
  ...commands.map(
    ({ name, what }) => `complete -c quillpath -n __quillpath_first -a ${name} -d ${quoted(what)}`,
  ),
  ...options.map((option) => optionLine('__quillpath_first', option)),
  ...commands.flatMap(commandLines),
].join('\n')}
`;
