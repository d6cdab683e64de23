from lxml import etree
from lxml.builder import ElementMaker
E = ElementMaker(namespace='http://www.w3.org/2000/svg', nsmap={None: 'http://www.w3.org/2000/svg'})
svg = E.svg(viewBox='0 0 148 105')
def ring(parent, name, r):
    return etree.SubElement(parent, 'circle', id=name, cx='50', cy='50', r=str(r))
ring(svg, 'outer', 20)
ring(svg, 'inner', 8)
svg.append(E.rect(id='post', x='1', y='0', width='1', height='1'))
etree.ElementTree(svg).write('out.svg')
