import svgwrite
d = svgwrite.Drawing('out.svg', viewBox='0 0 148 105')
def reed(x): return d.path(d=f'M{x} 90 L{x+1} 60 L{x+2} 90 Z', id=f'reed{x}')
for i in range(3): d.add(reed(10 * (i + 1)))
d.add(d.circle((100, 30), 12, id='sun'))
d.save()
