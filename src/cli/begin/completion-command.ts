/** `tombolo completion`: what a shell needs to complete commands, options and the values that they take. */
import { Argument, type Command, type Option } from 'commander';
import type { Host } from '../host';

const SHELLS = ['bash', 'zsh', 'fish'] as const;
type Shell = (typeof SHELLS)[number];

export function addCompletionCommand(program: Command, host: Host): void {
  program
    .command('completion')
    .summary('print what a shell needs to complete commands and options')
    .addArgument(new Argument('<shell>', 'which shell').choices(SHELLS))
    .addHelpText('after', EXAMPLES)
    .action((shell: Shell) => host.print(completionFor(shell, program)));
}

const EXAMPLES = `
Examples:
  tombolo completion bash >> ~/.bashrc
  tombolo completion zsh >> ~/.zshrc
  tombolo completion fish > ~/.config/fish/completions/tombolo.fish`;

function completionFor(shell: Shell, program: Command): string {
  if (shell === 'fish') return fishScript(program);
  return shell === 'zsh' ? `autoload -U +X bashcompinit && bashcompinit\n${bashScript(program)}` : bashScript(program);
}

const namesOf = (command: Command): string =>
  command.options
    .map(({ long }) => long)
    .filter(Boolean)
    .join(' ');
const withChoices = (command: Command): Option[] => command.options.filter(({ argChoices }) => argChoices?.length);

/** The command is the first word, the option the one before; where neither says anything, files are offered. */
function bashScript(program: Command): string {
  const cases = program.commands.map((command) => {
    const values = withChoices(command).map(
      ({ long, argChoices }) => `      if [ "$before" = "${long}" ]; then words="${argChoices?.join(' ')}"; fi`,
    );
    return [`    ${command.name()})`, `      words="${namesOf(command)} --help"`, ...values, '      ;;'].join('\n');
  });
  const names = program.commands.map((command) => command.name()).join(' ');
  return `_tombolo() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" words=""
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${names} --help --version" -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
  esac
  case "$word" in
    -*) COMPREPLY=($(compgen -W "$words" -- "$word")) ;;
    *) case "$words" in -*|"") COMPREPLY=() ;; *) COMPREPLY=($(compgen -W "$words" -- "$word")) ;; esac ;;
  esac
}
complete -o default -F _tombolo tombolo
`;
}

function fishScript(program: Command): string {
  const lines = program.commands.flatMap((command) => {
    const name = command.name();
    const own = `complete -c tombolo -n '__fish_seen_subcommand_from ${name}'`;
    const first = `complete -c tombolo -n __fish_use_subcommand -f -a ${name} -d ${quoted(command.summary())}`;
    return [first, ...command.options.map((option) => `${own} ${fishOption(option)}`)];
  });
  return `${lines.join('\n')}\n`;
}

function fishOption({ long, description, argChoices, required, optional }: Option): string {
  const values = argChoices ? ` -x -a ${quoted(argChoices.join(' '))}` : required || optional ? ' -r' : '';
  return `-l ${long?.slice(2)}${values} -d ${quoted(description)}`;
}

/** Within single quotes fish reads nothing but the backslash and the quote. */
function quoted(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}
