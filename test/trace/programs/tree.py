import xml.etree.ElementTree as ET
svg = ET.Element('svg', xmlns='http://www.w3.org/2000/svg', viewBox='0 0 148 105')
def ring(parent, name, r):
    return ET.SubElement(parent, 'circle', id=name, cx='50', cy='50', r=str(r))
ring(svg, 'outer', 20)
ring(svg, 'inner', 8)
for i in range(3):
    ET.SubElement(svg, 'rect', id=f'r{i}', x=str(i), y='0', width='1', height='1')
assert isinstance(ring(ET.Element('g'), 'loose', 1), ET.Element)
ET.ElementTree(svg).write('out.svg')
