"""What becomes of modules, of the program itself and of the files that it writes, while it is traced."""
import builtins
import os
import sys
import types
from importlib.machinery import ExtensionFileLoader, SourceFileLoader
from importlib.util import decode_source

from tombolo_places import ROOT, SETTINGS, after_own_place, is_own

FOLDER = SETTINGS.get('folder', '')
NOTE = os.path.join(FOLDER, 'outputs.txt')
WRITING = os.O_WRONLY | os.O_RDWR


def trace_program():
    import tombolo_literals

    noted = set()
    setattr(builtins, tombolo_literals.CALLBACK, after_own_place)
    setattr(builtins, tombolo_literals.TARGET, target_told(noted))
    mark_modules()
    patch_libraries()
    watch_events(noted)


def code_of(path, data):
    """The marked program, where it has something to mark and can be read; who cannot be read says so itself."""
    from tombolo_literals import marked

    try:
        tree = marked(decode_source(data), path)
        return tree and compile(tree, path, 'exec', dont_inherit=True)
    except (SyntaxError, ValueError, RecursionError):
        return None


def mark_modules():
    get_code = SourceFileLoader.get_code

    def marked_code(self, fullname):
        path = self.get_filename(fullname)
        code = code_of(path, self.get_data(path)) if is_own(path) else None
        return code or get_code(self, fullname)

    SourceFileLoader.get_code = marked_code


def patch_libraries():
    from tombolo_libraries import MAKERS

    for loader in (SourceFileLoader, ExtensionFileLoader):
        loader.exec_module = executed(loader.exec_module, MAKERS)


def executed(execute, makers):
    def exec_module(self, module):
        execute(self, module)
        patch = makers.get(module.__name__)
        if patch is not None:
            patch(module)

    return exec_module


def target_told(noted):
    """Gives what is written to as it is. Where that is a drawing's name, not its text, the file is noted."""

    def told(target):
        if isinstance(target, (str, bytes, os.PathLike)) and is_drawing(os.fsdecode(target)):
            note(target, noted)
        return target

    return told


def is_drawing(name):
    return len(name) < 4096 and '<' not in name and name.lower().endswith(('.svg', '.xml'))


def watch_events(noted):
    """The interpreter compiles the program itself where nothing can be put between, but tells before it runs it."""
    script = os.path.abspath(sys.argv[0]) if getattr(sys, 'argv', None) and sys.argv[0] else None
    waiting = [script] if script and os.path.isfile(script) else []

    def hook(event, args):
        if event == 'exec' and waiting:
            run_instead(args[0], waiting)
        elif event == 'open' and isinstance(args[0], (str, bytes)) and is_writing(args[1], args[2]):
            note(args[0], noted)
        elif event == 'os.rename':
            note(args[1], noted)

    hook.__cantrace__ = True
    sys.addaudithook(hook)


def run_instead(code, waiting):
    if not isinstance(code, types.CodeType) or os.path.abspath(code.co_filename) != waiting[0]:
        return
    script = waiting.pop()
    with open(script, 'rb') as file:
        ours = code_of(code.co_filename, file.read())
    if ours is None:
        return
    try:
        exec(ours, sys.modules['__main__'].__dict__)
    except (SystemExit, KeyboardInterrupt):
        raise
    except BaseException as error:
        # Told as the interpreter tells it: without the frame of this function.
        error.__traceback__ = error.__traceback__ and error.__traceback__.tb_next
        sys.excepthook(type(error), error, error.__traceback__)
        raise SystemExit(1) from None
    raise SystemExit


def is_writing(mode, flags):
    if isinstance(mode, str):
        return any(letter in mode for letter in 'wax+')
    return isinstance(flags, int) and bool(flags & WRITING)


def note(target, noted):
    """Files elsewhere than under the root, where nobody would look for marks."""
    path = os.path.abspath(os.fsdecode(target))
    if path in noted or path.startswith(FOLDER) or path.startswith(ROOT + os.sep):
        return
    noted.add(path)
    with open(NOTE, 'a', encoding='utf-8') as file:
        file.write(path + '\n')
