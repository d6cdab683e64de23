/** Required before a traced program: marks what it loads, and answers who called. The program itself stays as it is. */
import Module, { register } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PLACE_SEPARATOR } from '../marks';
import { settingsOfProcess, type TraceSettings } from '../settings';
import { afterOwnPlace, Callers } from './callers';
import { CALLERS, loadedText } from './load';
import { noteOutputs } from './outputs';
import { REMEMBER, remember } from './tree-libraries';

interface Compiling {
  _compile(this: unknown, text: string, file: string, ...rest: unknown[]): unknown;
}

const settings = settingsOfProcess();
if (settings) trace(settings);

function trace(settings: TraceSettings): void {
  // Errors then tell the lines and columns that the user wrote.
  process.setSourceMapsEnabled(true);
  const callers = new Callers(settings.root);
  offer(CALLERS, () => afterOwnPlace(callers.places()));
  offer(REMEMBER, (element: unknown) => remember(element, settings.attribute, callers.places().join(PLACE_SEPARATOR)));
  markCommonModules(settings);
  noteOutputs(settings);
  register(pathToFileURL(path.join(__dirname, 'hooks.cjs')));
}

function offer(name: string, value: unknown): void {
  Object.defineProperty(globalThis, name, { value, enumerable: false });
}

function markCommonModules(settings: TraceSettings): void {
  const { prototype } = Module as unknown as { readonly prototype: Compiling };
  const compile = prototype._compile;
  prototype._compile = function (text, file, ...rest) {
    return compile.call(this, loadedText(text, file, settings), file, ...rest);
  };
}
