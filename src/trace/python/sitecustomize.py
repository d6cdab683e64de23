"""Runs before a traced program, found by PYTHONPATH. The program itself stays as it is."""
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))


def begin():
    import tombolo_loading

    tombolo_loading.trace_program()


def run_theirs():
    """The module of this name that would have run without us, as a system or an environment may have one."""
    import importlib.machinery

    spec = importlib.machinery.PathFinder.find_spec('sitecustomize', sys.path)
    if spec is not None and spec.loader is not None:
        module = sys.modules['sitecustomize'] = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)


if os.environ.get('TOMBOLO_TRACE'):
    keep = sys.dont_write_bytecode
    sys.dont_write_bytecode = True
    begin()
    sys.dont_write_bytecode = keep
sys.path[:] = [path for path in sys.path if os.path.abspath(path or os.curdir) != HERE]
import importlib.util  # noqa: E402

run_theirs()
