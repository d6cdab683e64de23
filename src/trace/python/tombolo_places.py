"""Places in the user's own files, as marks have them: path:line:column, counted from one in UTF-16 code units."""
import json
import os
import re
import sys

SETTINGS = json.loads(os.environ.get('TOMBOLO_TRACE', '{}'))
ROOT = SETTINGS.get('root', '')
ATTRIBUTE = SETTINGS.get('attribute', '')
HERE = os.path.dirname(os.path.abspath(__file__)) + os.sep
LIBRARY = os.path.dirname(os.path.abspath(os.__file__)) + os.sep
MOST_PLACES = 4
PACKAGES = re.compile(r'[\\/](?:site|dist)-packages[\\/]')


def is_own(path):
    """Whether a file is neither the language's, nor a package's, nor one of ours."""
    if path.startswith('<') or PACKAGES.search(path):
        return False
    full = os.path.abspath(path)
    return not full.startswith(LIBRARY) and not full.startswith(HERE)


def encoded(path):
    """What is no plain character is written as ~ and two hexadecimal digits a byte."""
    return re.sub(r'[^A-Za-z0-9_./-]', lambda found: ''.join('~%02x' % byte for byte in found.group().encode()), path)


def shown(path):
    return encoded(os.path.relpath(os.path.realpath(path), ROOT).replace(os.sep, '/'))


def utf16_column(line, column):
    """From a column in UTF-8 bytes, as the compiler counts, to one in UTF-16 code units."""
    before = line.encode('utf-8', 'surrogatepass')[:column].decode('utf-8', 'replace')
    return len(before.encode('utf-16-le', 'surrogatepass')) // 2


class Callers:
    """Asks a running program from where it was called."""

    def __init__(self):
        self.known = {}
        self.lines = {}

    def places(self, depth):
        """Places of the user's own files, innermost first; the frame at depth is the first that is looked at."""
        found = []
        frame = sys._getframe(depth)
        while frame is not None and len(found) < MOST_PLACES:
            key = (frame.f_code, frame.f_lasti)
            if key in self.known:
                place = self.known[key]
            else:
                place = self.known[key] = self.place_of(frame)
            if place is not None:
                found.append(place)
            frame = frame.f_back
        return found

    def place_of(self, frame):
        path = frame.f_code.co_filename
        if not is_own(path):
            return None
        line, column = self.position_of(frame)
        return '%s:%d:%d' % (shown(path), line, column + 1)

    def position_of(self, frame):
        line = frame.f_lineno or 1
        text = self.line_of(frame.f_code.co_filename, line)
        if not hasattr(frame.f_code, 'co_positions'):
            # Before Python 3.11 only the line is known.
            return line, len(text) - len(text.lstrip())
        positions = list(frame.f_code.co_positions())[frame.f_lasti // 2]
        line = positions[0] or line
        return line, utf16_column(self.line_of(frame.f_code.co_filename, line), positions[2] or 0)

    def line_of(self, path, line):
        if path not in self.lines:
            try:
                from importlib.util import decode_source

                with open(path, 'rb') as file:
                    self.lines[path] = decode_source(file.read()).split('\n')
            except (OSError, SyntaxError, UnicodeError):
                self.lines[path] = []
        lines = self.lines[path]
        return lines[line - 1] if line <= len(lines) else ''


CALLERS = Callers()


def after_own_place():
    """What goes behind a literal's own place: the callers of the function that holds the literal."""
    return ''.join(',' + place for place in CALLERS.places(2)[1:])
