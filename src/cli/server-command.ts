/** `tombolo server`: the language server for editors of every kind, on standard input and output. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Command } from 'commander';
import { Failure } from './failure';

export function addServerCommand(program: Command): void {
  program
    .command('server')
    .summary('serve an editor: the language server protocol on standard input and output')
    .description(
      'Speaks the language server protocol on standard input and output until the editor ends it: findings as you type, ' +
        'hover, outline and fixes.',
    )
    .option('--stdio', 'how it talks, which some editors state; it knows no other way')
    .action(() => startServer(path.join(__dirname, 'server.cjs')));
}

/** It lies beside the command in a build and in the extension's package. The server's bundle reads from the arguments how it is spoken to, and runs until its editor ends it. */
function startServer(bundle: string): void {
  if (!existsSync(bundle))
    throw new Failure("the server comes with the extension's package, not with this one: run dist/cli.cjs of that");
  process.argv = [process.execPath, bundle, '--stdio'];
  createRequire(bundle)(bundle);
}
