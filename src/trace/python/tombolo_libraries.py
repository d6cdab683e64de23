"""Libraries that build trees: whoever makes an element is remembered on it."""
from tombolo_places import ATTRIBUTE, CALLERS


def remember(element, depth=3):
    places = CALLERS.places(depth)
    if places:
        element.set(ATTRIBUTE, ','.join(places))
    return element


def element_tree(module):
    """xml.etree.ElementTree; a class takes the place of the class, and knows the other's elements as its own."""
    base, make_child = module.Element, module.SubElement

    class OfAnyMaker(type):
        def __instancecheck__(cls, instance):
            return isinstance(instance, base) if cls is Element else super().__instancecheck__(instance)

        def __subclasscheck__(cls, other):
            return issubclass(other, base) if cls is Element else super().__subclasscheck__(other)

    class Element(base, metaclass=OfAnyMaker):
        def __init__(self, tag, attrib={}, **extra):
            super().__init__(tag, attrib, **extra)
            remember(self)

    Element.__module__ = module.__name__
    Element.__qualname__ = 'Element'

    def SubElement(parent, tag, attrib={}, **extra):
        return remember(make_child(parent, tag, attrib, **extra))

    module.Element, module.SubElement = Element, SubElement


def lxml(module):
    """lxml.etree, whose makers are functions."""
    make, make_child = module.Element, module.SubElement

    def Element(*args, **keywords):
        return remember(make(*args, **keywords))

    def SubElement(*args, **keywords):
        return remember(make_child(*args, **keywords))

    module.Element, module.SubElement = Element, SubElement


def svgwrite(module):
    """svgwrite.base: its elements become those of ElementTree only when they are written."""
    base = module.BaseElement
    begin, make = base.__init__, base.get_xml
    makers = {}

    def __init__(self, *args, **keywords):
        begin(self, *args, **keywords)
        self.__dict__['_tombolo_places'] = CALLERS.places(2)

    def get_xml(self):
        element = make(self)
        places = self.__dict__.get('_tombolo_places')
        if places:
            element.set(ATTRIBUTE, ','.join(places))
        return element

    base.__init__, base.get_xml = __init__, get_xml


def minidom(module):
    document = module.Document

    def wrapped(make):
        def create(self, *args, **keywords):
            element = make(self, *args, **keywords)
            places = CALLERS.places(2)
            if places:
                element.setAttribute(ATTRIBUTE, ','.join(places))
            return element

        return create

    document.createElement = wrapped(document.createElement)
    document.createElementNS = wrapped(document.createElementNS)


MAKERS = {
    'xml.etree.ElementTree': element_tree,
    'lxml.etree': lxml,
    'svgwrite.base': svgwrite,
    'xml.dom.minidom': minidom,
}
