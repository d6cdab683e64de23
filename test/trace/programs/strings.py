"""Reeds <rect in a doc string is left alone/>."""
def el(name, **kw):
    attrs = ' '.join(f'{k}="{v}"' for k, v in kw.items())
    return f'<{name} {attrs}/>'
def reed(x, h):
    return f'<path id="reed{x}" d="M{x} 90L{x+1} {90-h}L{x+2} 90Z"/>'
parts = [reed(10 + 7 * i, 20) for i in range(5)]
parts.append(el('circle', id='sun', cx=100, cy=30, r=12))
emoji = '🦦🌾'; parts.append('<rect id="%s" x="%d" y="40" width="6" height="50"/>' % ('post', 120))
parts.append("<ellipse id='{}' cx='60' cy='97' rx='40' ry='4'/>".format('pond'))
named = 'line'; parts.append('<' + named + ' id="worked-out" x1="1" x2="2"/>')
parts.append('<%s id="percent" r="1"/>' % 'circle')
for i in range(3):
	parts.append(f'''
  <g id="row{i}">
    <rect id="brick{i}" x="{i % 100}" y="{100 + i // 100}" width="0.5" height="0.5"/>
    {f'<circle id="dot{i}" cx="{i}" cy="3" r="1"/>' if i else ''}
  </g>''')
with open('out.svg', 'w', newline='') as f:
    f.write(f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 148 105">{"".join(parts)}</svg>')
