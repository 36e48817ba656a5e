import type { ArgumentWords, CommandWords, Expected, OptionWords, ProgramWords } from './command-words.ts';
import { quoted } from './quoted.ts';

/** What may be in a place, as the script below reads it. */
const kindOf = (expected: Expected): string =>
  typeof expected === 'string' ? `@${expected}` : expected.join(' ');

/** A branch for each value that an option takes; options that take the same share one. */
function valueBranches(options: readonly OptionWords[]): readonly string[] {
  const byKind = new Map<string, string[]>();
  for (const { long, value } of options) {
    if (value === null) continue;
    const kind = kindOf(value.expected);
    byKind.set(kind, [...(byKind.get(kind) ?? []), long]);
  }
  return [...byKind].map(([kind, longs]) => `        ${longs.join('|')}) value=${quoted(kind)} ;;`);
}

/** A branch for each place after the command. */
const placeBranches = (places: readonly ArgumentWords[]): readonly string[] =>
  places.map(
    ({ expected, repeats }, i) => `        ${repeats ? '*' : i + 1}) place=${quoted(kindOf(expected))} ;;`,
  );

const commandBranch = ({ name, options }: CommandWords): string =>
  [
    `    ${name})`,
    `      options=${quoted(options.map(({ long }) => long).join(' '))}`,
    `      valued=${quoted(options.flatMap(({ long, value }) => (value === null ? [] : [` ${long} `])).join(''))}`,
    '      ;;',
  ].join('\n');

const whereBranch = ({ name, options, arguments: places }: CommandWords): string =>
  [
    `    ${name})`,
    '      case "$previous" in',
    ...valueBranches(options),
    '      esac',
    '      case "$count" in',
    ...placeBranches(places),
    '      esac',
    '      ;;',
  ].join('\n');

/** Completion for bash, by its own `complete`. It keeps to what bash 3.2 knows, which some systems still come with. */
export function bashCompletion({ commands, options }: ProgramWords): string {
  const first = [...commands.map(({ name }) => name), ...options.map(({ long }) => long)];
  return `# What bash completes after "quillpath". Made by: quillpath completion bash
_quillpath() {
  local current=\${COMP_WORDS[COMP_CWORD]} previous=\${COMP_WORDS[COMP_CWORD-1]}
  local options='' valued='' value='' place='' count=1 i=2 word IFS=$' \t\n'
  COMPREPLY=()
  # bash takes --units=metric for three words.
  if [ "$current" = '=' ]; then
    current=''
  elif [ "$previous" = '=' ]; then
    previous=\${COMP_WORDS[COMP_CWORD-2]}
  fi
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W ${quoted(first.join(' '))} -- "$current"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${commands.map(commandBranch).join('\n')}
  esac
  # How many words before this one are neither options nor values of options.
  while [ "$i" -lt "$COMP_CWORD" ]; do
    word=\${COMP_WORDS[i]}
    case "$word" in
      =|:) i=$((i + 1)) ;;
      -*)
        case "$valued" in
          *" $word "*) [ "\${COMP_WORDS[i+1]}" = '=' ] || i=$((i + 1)) ;;
        esac
        ;;
      *) count=$((count + 1)) ;;
    esac
    i=$((i + 1))
  done
  case "\${COMP_WORDS[1]}" in
${commands.map(whereBranch).join('\n')}
  esac
  if [ -z "$value" ]; then
    case "$current" in
      -*) value=$options ;;
      *) value=\${place:-$options} ;;
    esac
  fi
  case "$value" in
    # Nothing of ours: then bash completes names of files, quotes and folders included.
    @file) ;;
    @text) compopt +o default 2>/dev/null ;;
    *) COMPREPLY=($(compgen -W "$value" -- "$current")) ;;
  esac
  return 0
}
complete -o default -F _quillpath quillpath
`;
}
