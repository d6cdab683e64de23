"""Puts marks into the string literals of a program as it is compiled. No line and no column moves."""
import ast
import re

from tombolo_places import ATTRIBUTE, shown, utf16_column

NAMES = (
    'a|animate|animateMotion|animateTransform|circle|clipPath|defs|desc|ellipse|fe[A-Z][A-Za-z]*|filter|foreignObject|g'
    '|image|line|linearGradient|marker|mask|metadata|mpath|path|pattern|polygon|polyline|radialGradient|rect|set|stop'
    '|style|svg|switch|symbol|text|textPath|title|tspan|use|view'
)
TAG = r'<(?:[A-Za-z_][\w.-]*:)?(?:%s)' % NAMES
# A name that is worked out: of str.format, and of the percent sign.
WORKED_OUT = r'<\{[^{}<]*\}(?=[\s/>]|$)|<%(?:\(\w+\))?s(?=[\s/>]|$)'
IN_VALUE = re.compile(r'%s(?=[\s/>{%%]|$)|%s' % (TAG, WORKED_OUT))
IN_SOURCE = re.compile(r'%s(?=[\s/>{%%"\'\\]|$)|<%%(?:\(\w+\))?s(?=[\s/>"\'\\]|$)|<\{(?!\{)' % TAG)
SOUGHT = re.compile(r'<([A-Za-z][\w:.-]*)(?=\s*/?>|\s+[^\s\'"`/]|\\s[*+]?[^\s/])')
SEARCHES = {
    'replace', 'split', 'rsplit', 'find', 'rfind', 'index', 'rindex', 'startswith', 'endswith', 'count', 'partition',
    'rpartition', 'sub', 'subn', 'compile', 'match', 'fullmatch', 'search', 'findall', 'finditer', 'removeprefix',
    'removesuffix',
}
CALLBACK = '__tombolo_callers'
TARGET = '__tombolo_target'
# What a tree writes itself to by name is opened by a library in C, which no audit hook hears of.
WRITERS = {'write', 'write_c14n'}


def marked(source, path):
    """The tree of a program with its marks; None where it writes no start tag."""
    if '<' not in source and '.write' not in source:
        return None
    tree = ast.parse(source, path)
    marker = Marker(source, path)
    tree = marker.visit(tree)
    return ast.fix_missing_locations(tree) if marker.changed else None


class Marker(ast.NodeTransformer):
    def __init__(self, source, path):
        self.lines = source.split('\n')
        self.path = shown(path)
        self.changed = False
        self.sought = set()
        self.places = None

    # What is compared, looked for or said of types stays as it is.

    def visit_Expr(self, node):
        return node if isinstance(node.value, ast.Constant) else self.generic_visit(node)

    def visit_Match(self, node):
        node.subject = self.visit(node.subject)
        for case in node.cases:
            case.body = [self.visit(each) for each in case.body]
        return node

    def visit_Compare(self, node):
        for each in [node.left, *node.comparators]:
            self.seek(each)
        node.left = self.unless_literal(node.left)
        node.comparators = [self.unless_literal(each) for each in node.comparators]
        return node

    def visit_Subscript(self, node):
        node.value = self.visit(node.value)
        node.slice = self.unless_literal(node.slice)
        return node

    def visit_Dict(self, node):
        node.keys = [key and self.unless_literal(key) for key in node.keys]
        node.values = [self.visit(each) for each in node.values]
        return node

    def visit_AnnAssign(self, node):
        node.value = node.value and self.visit(node.value)
        return node

    def visit_arg(self, node):
        return node

    def visit_Call(self, node):
        name = getattr(node.func, 'attr', getattr(node.func, 'id', None))
        first = node.args[:1] if name in SEARCHES else []
        for each in first:
            self.seek(each)
        kept = [self.unless_literal(each) for each in first]
        node.func = self.visit(node.func)
        node.args = kept + [self.visit(each) for each in node.args[len(first):]]
        node.keywords = [self.visit(each) for each in node.keywords]
        if isinstance(node.func, ast.Attribute) and name in WRITERS:
            self.tell_target(node)
        return node

    def tell_target(self, node):
        if node.args and not isinstance(node.args[0], ast.Starred):
            node.args[0] = self.told(node.args[0])
        for each in node.keywords:
            if each.arg == 'file':
                each.value = self.told(each.value)

    def told(self, node):
        self.changed = True
        return ast.copy_location(ast.Call(ast.Name(TARGET, ast.Load()), [node], []), node)

    def unless_literal(self, node):
        return node if isinstance(node, ast.Constant) else self.visit(node)

    def seek(self, node):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            self.sought.update(SOUGHT.findall(node.value))

    # What is written.

    def visit_BinOp(self, node):
        before = node.left.right if isinstance(node.left, ast.BinOp) else node.left
        ends = isinstance(before, ast.Constant) and isinstance(before.value, str) and before.value.endswith('<')
        place = self.position(before.end_lineno, before.end_col_offset - 2) if ends else None
        self.generic_visit(node)
        if ends and isinstance(node.op, ast.Add) and not isinstance(node.right, ast.Constant):
            node.right = ast.BinOp(node.right, ast.Add(), ast.JoinedStr(self.mark(place)))
        return node

    def visit_Constant(self, node):
        if isinstance(node.value, bytes):
            return self.bytes_literal(node)
        if not isinstance(node.value, str) or not IN_VALUE.search(node.value):
            return node
        return self.whole(node, lambda: ast.JoinedStr(self.pieces(node.value)))

    def visit_JoinedStr(self, node):
        return self.whole(node, lambda: ast.JoinedStr(self.values(node)))

    def whole(self, node, make):
        """An outermost literal: places of all start tags in it, those of literals within it included."""
        outer = self.places is None
        if outer:
            self.places = Places(self, node)
        made = make()
        if outer:
            self.places = None
        return ast.copy_location(made, node)

    def values(self, node):
        values = []
        for index, value in enumerate(node.values):
            if isinstance(value, ast.Constant):
                values += self.pieces(value.value)
                continue
            named = ends_in_bracket(node.values[:index]) and begins_behind_name(node.values[index + 1:])
            place = self.places.next('<{') if named else None
            values.append(self.generic_visit(value))
            if named:
                values += self.mark(place)
        return values

    def pieces(self, text):
        values = []
        done = 0
        for found in IN_VALUE.finditer(text):
            place = self.places.next(found.group())
            if found.group()[1:] in self.sought:
                continue
            values += [ast.Constant(text[done:found.end()]), *self.mark(place)]
            done = found.end()
        return [*values, ast.Constant(text[done:])]

    def bytes_literal(self, node):
        text = node.value.decode('latin-1')
        if not IN_VALUE.search(text):
            return node
        place = self.position(node.lineno, node.col_offset)
        self.changed = True
        mark = ' %s="%s:%s"' % (ATTRIBUTE, self.path, place)
        return ast.copy_location(ast.Constant(IN_VALUE.sub(lambda it: it.group() + mark, text).encode('latin-1')), node)

    def mark(self, place):
        self.changed = True
        call = ast.Call(ast.Name(CALLBACK, ast.Load()), [], [])
        begin = ast.Constant(' %s="%s:%s' % (ATTRIBUTE, self.path, place))
        return [begin, ast.FormattedValue(call, -1, None), ast.Constant('"')]

    def position(self, line, column):
        return '%d:%d' % (line, utf16_column(self.lines[line - 1], column) + 1)


class Places:
    """Where the start tags of a literal stand in the source, taken in their order."""

    def __init__(self, marker, node):
        self.start = marker.position(node.lineno, node.col_offset)
        self.found = list(self.all(marker.lines, node))

    def all(self, lines, node):
        for line in range(node.lineno, (node.end_lineno or node.lineno) + 1):
            text = lines[line - 1].encode('utf-8', 'surrogatepass')
            begin = node.col_offset if line == node.lineno else 0
            end = node.end_col_offset if line == node.end_lineno else len(text)
            before = text[:begin].decode('utf-8', 'surrogatepass')
            for found in IN_SOURCE.finditer(text[begin:end].decode('utf-8', 'surrogatepass')):
                column = len((before + found.string[:found.start()]).encode('utf-16-le', 'surrogatepass')) // 2
                yield found.group(), '%d:%d' % (line, column + 1)

    def next(self, tag):
        """The next of this name; where escapes hide it, where the literal begins."""
        wanted = '<{' if tag.startswith('<{') else tag
        for index, (found, place) in enumerate(self.found):
            if found == wanted:
                del self.found[:index + 1]
                return place
        return self.start


def ends_in_bracket(values):
    return bool(values) and isinstance(values[-1], ast.Constant) and values[-1].value.endswith('<')


def begins_behind_name(values):
    if not values or not isinstance(values[0], ast.Constant):
        return True
    return re.match(r'[\s/>]|$', values[0].value) is not None
